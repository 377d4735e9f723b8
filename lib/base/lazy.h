// SPDX-License-Identifier: MIT
#pragma once

#include <atomic>
#include <memory>
#include <utility>

namespace asterism {

/// A place for a thing that is made when it is first asked for, by any thread; of two threads that
/// make it at once, one throws its own away.
template <class T>
class LazyCell {
public:
    LazyCell() = default;
    LazyCell(LazyCell const&) = delete;
    LazyCell& operator=(LazyCell const&) = delete;
    ~LazyCell() { delete made_.load(std::memory_order_relaxed); }

    template <class Make>
    T const& get(Make make) const {
        if (auto const* known = made_.load(std::memory_order_acquire)) return *known;
        auto fresh = std::make_unique<T const>(make());
        T const* other = nullptr;
        if (made_.compare_exchange_strong(other, fresh.get(), std::memory_order_acq_rel))
            return *fresh.release();
        return *other;
    }

private:
    mutable std::atomic<T const*> made_{nullptr};
};

/// A thing that may be made when it is first asked for. Copies share it.
template <class T>
class Lazy {
public:
    /// Where the thing stands.
    class Place {
    public:
        virtual ~Place() = default;
        virtual T const& get() const = 0;
    };
    /// Makes the thing: `make` may throw and is then asked again the next time.
    class Maker : public Place {
    public:
        T const& get() const final {
            return cell_.get([this] { return make(); });
        }

    private:
        virtual T make() const = 0;

        LazyCell<T> cell_;
    };

    Lazy() = default;
    Lazy(T value) : place_(std::make_shared<Ready>(std::move(value))) {}
    static Lazy deferred(std::shared_ptr<Maker const> maker) {
        Lazy result;
        result.place_ = std::move(maker);
        return result;
    }

    T const& operator*() const { return place_ ? place_->get() : nothing(); }
    T const* operator->() const { return &**this; }
    operator T const&() const { return **this; }

private:
    class Ready final : public Place {
    public:
        explicit Ready(T value) : value_(std::move(value)) {}
        T const& get() const override { return value_; }

    private:
        T value_;
    };

    static T const& nothing() {
        static T const value{};
        return value;
    }

    std::shared_ptr<Place const> place_;
};

}  // namespace asterism
