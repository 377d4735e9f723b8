// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <span>
#include <vector>

namespace asterism {

/// Things sorted by a small number (a node, a finding), in one array.
template <class T>
class Grouped {
public:
    /// `each(put)` calls `put(number, thing)` for everything there is, and does so twice, alike;
    /// the numbers are below `count`. Things of one number keep their order.
    template <class Each>
    Grouped(std::size_t count, Each each) : begin_(count + 1) {
        each([&](std::uint32_t number, T const&) { ++begin_[number + 1]; });
        for (std::size_t i = 0; i < count; ++i) begin_[i + 1] += begin_[i];
        things_.resize(begin_.back());
        auto next = begin_;
        each([&](std::uint32_t number, T const& thing) { things_[next[number]++] = thing; });
    }

    std::span<T const> at(std::uint32_t number) const {
        return std::span(things_).subspan(begin_[number], begin_[number + 1] - begin_[number]);
    }

private:
    std::vector<std::uint32_t> begin_;
    std::vector<T> things_;
};

}  // namespace asterism
