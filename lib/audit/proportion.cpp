// SPDX-License-Identifier: MIT
#include "audit/proportion.h"

#include <algorithm>
#include <cmath>

namespace asterism::audit {

Interval wilson(std::uint64_t count, std::uint64_t total) {
    if (total == 0) return {0, 1};
    double const n = static_cast<double>(total), p = static_cast<double>(count) / n;
    double const z2 = z95 * z95;
    double const middle = (p + z2 / (2 * n)) / (1 + z2 / n);
    double const half = z95 * std::sqrt(p * (1 - p) / n + z2 / (4 * n * n)) / (1 + z2 / n);
    // At the ends the limit is the end itself, which rounding would miss.
    return {count == 0 ? 0 : std::max(0.0, middle - half),
            count == total ? 1 : std::min(1.0, middle + half)};
}

}  // namespace asterism::audit
