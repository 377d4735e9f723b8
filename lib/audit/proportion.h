// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>

namespace asterism::audit {

/// The standard normal quantile of a two-sided 95 % interval.
inline constexpr double z95 = 1.959963984540054;

struct Interval {
    double low = 0;
    double high = 1;
};

/// The 95 % score interval of a proportion (Wilson 1927): inside 0 to 1 always, sensible at 0 and
/// n. Of nothing (`total` 0) it is 0 to 1: nothing is known.
Interval wilson(std::uint64_t count, std::uint64_t total);

/// A share with its interval. `value` means nothing when `total` is 0.
struct Proportion {
    std::uint64_t count = 0;
    std::uint64_t total = 0;

    bool known() const { return total > 0; }
    double value() const { return static_cast<double>(count) / static_cast<double>(total); }
    Interval interval() const { return wilson(count, total); }
};

}  // namespace asterism::audit
