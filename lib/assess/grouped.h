// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <span>
#include <utility>
#include <vector>

namespace asterism {

/// Things sorted by a small number (a node, a finding), in one array.
template <class T>
class Grouped {
public:
    /// `things` with the number of each, all below `count`; those of one number keep their order.
    Grouped(std::size_t count, std::vector<std::pair<std::uint32_t, T>> const& things)
        : begin_(count + 1), things_(things.size()) {
        for (auto const& [number, thing] : things) ++begin_[number + 1];
        for (std::size_t i = 0; i < count; ++i) begin_[i + 1] += begin_[i];
        auto next = begin_;
        for (auto const& [number, thing] : things) things_[next[number]++] = thing;
    }

    std::span<T const> at(std::uint32_t number) const {
        return std::span(things_).subspan(begin_[number], begin_[number + 1] - begin_[number]);
    }

private:
    std::vector<std::uint32_t> begin_;
    std::vector<T> things_;
};

}  // namespace asterism
