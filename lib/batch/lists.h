// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <span>
#include <vector>

namespace asterism::batch {

/// Lists of T by index, in one array.
template <class T>
class Lists {
public:
    explicit Lists(std::vector<std::vector<T>> const& lists = {}) {
        begin_.push_back(0);
        for (auto const& list : lists) {
            items_.insert(items_.end(), list.begin(), list.end());
            begin_.push_back(static_cast<std::uint32_t>(items_.size()));
        }
    }
    std::size_t size() const { return begin_.size() - 1; }
    std::span<T const> operator[](std::size_t index) const {
        return std::span(items_).subspan(begin_[index], begin_[index + 1] - begin_[index]);
    }

private:
    std::vector<T> items_;
    std::vector<std::uint32_t> begin_;
};

}  // namespace asterism::batch
