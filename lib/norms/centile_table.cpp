// SPDX-License-Identifier: MIT
#include "norms/centile_table.h"

#include <algorithm>

namespace asterism::norms {

Band bracket(double value, std::vector<PrintedCentile> const& printed) {
    auto const at_or_above = std::ranges::lower_bound(printed, value, {}, &PrintedCentile::value);
    auto const above = std::ranges::upper_bound(printed, value, {}, &PrintedCentile::value);
    if (at_or_above != above) return point(at_or_above->centile);
    return {above == printed.begin() ? 0 : std::prev(above)->centile,
            above == printed.end() ? 100 : above->centile};
}

Band bracket(Band values, std::vector<PrintedCentile> const& printed) {
    return cover(bracket(values.low, printed), bracket(values.high, printed));
}

}  // namespace asterism::norms
