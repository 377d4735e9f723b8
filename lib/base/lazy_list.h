// SPDX-License-Identifier: MIT
#pragma once

#include <compare>
#include <cstddef>
#include <initializer_list>
#include <iterator>
#include <memory>
#include <utility>
#include <vector>

#include "base/lazy.h"

namespace asterism {

/// A list of which the items may be made when they are first asked for. Reading it is that of a
/// vector. Whoever changes it gets a vector of its own: every item is then made.
template <class T>
class LazyList {
public:
    using value_type = T;

    /// Makes the items, each once; `make` may throw.
    class Maker {
    public:
        explicit Maker(std::size_t size) : cells_(size) {}
        virtual ~Maker() = default;
        std::size_t size() const { return cells_.size(); }
        T const& at(std::size_t index) const {
            return cells_[index].get([&] { return make(index); });
        }

    private:
        virtual T make(std::size_t index) const = 0;

        std::vector<LazyCell<T>> cells_;
    };

    class const_iterator {
    public:
        using iterator_category = std::random_access_iterator_tag;
        using value_type = T;
        using difference_type = std::ptrdiff_t;
        using pointer = T const*;
        using reference = T const&;

        const_iterator() = default;
        const_iterator(LazyList const* list, difference_type at) : list_(list), at_(at) {}

        reference operator*() const { return (*list_)[static_cast<std::size_t>(at_)]; }
        pointer operator->() const { return &**this; }
        reference operator[](difference_type by) const { return *(*this + by); }
        const_iterator& operator++() { return ++at_, *this; }
        const_iterator operator++(int) { return {list_, at_++}; }
        const_iterator& operator--() { return --at_, *this; }
        const_iterator operator--(int) { return {list_, at_--}; }
        const_iterator& operator+=(difference_type by) { return at_ += by, *this; }
        const_iterator& operator-=(difference_type by) { return at_ -= by, *this; }
        friend const_iterator operator+(const_iterator it, difference_type by) { return it += by; }
        friend const_iterator operator+(difference_type by, const_iterator it) { return it += by; }
        friend const_iterator operator-(const_iterator it, difference_type by) { return it -= by; }
        friend difference_type operator-(const_iterator a, const_iterator b) {
            return a.at_ - b.at_;
        }
        friend bool operator==(const_iterator a, const_iterator b) { return a.at_ == b.at_; }
        friend auto operator<=>(const_iterator a, const_iterator b) { return a.at_ <=> b.at_; }

    private:
        LazyList const* list_ = nullptr;
        difference_type at_ = 0;
    };

    LazyList() = default;
    LazyList(std::vector<T> items) : items_(std::move(items)) {}
    LazyList(std::initializer_list<T> items) : items_(items) {}
    static LazyList deferred(std::shared_ptr<Maker const> maker) {
        LazyList result;
        result.maker_ = std::move(maker);
        return result;
    }

    std::size_t size() const { return maker_ ? maker_->size() : items_.size(); }
    bool empty() const { return size() == 0; }
    T const& operator[](std::size_t index) const {
        return maker_ ? maker_->at(index) : items_[index];
    }
    T const& front() const { return (*this)[0]; }
    T const& back() const { return (*this)[size() - 1]; }
    const_iterator begin() const { return {this, 0}; }
    const_iterator end() const { return {this, static_cast<std::ptrdiff_t>(size())}; }

    T& operator[](std::size_t index) { return own()[index]; }
    T& front() { return own().front(); }
    T& back() { return own().back(); }
    auto begin() { return own().begin(); }
    auto end() { return own().end(); }
    void push_back(T item) { own().push_back(std::move(item)); }

    /// The items as a vector that can be changed.
    std::vector<T>& own() {
        if (!maker_) return items_;
        items_.reserve(maker_->size());
        for (std::size_t i = 0; i < maker_->size(); ++i) items_.push_back(maker_->at(i));
        maker_.reset();
        return items_;
    }

private:
    std::vector<T> items_;
    std::shared_ptr<Maker const> maker_;
};

}  // namespace asterism
