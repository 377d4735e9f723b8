// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "norms/band.h"

namespace asterism::norms {

/// One printed centile of a trait.
struct PrintedCentile {
    double centile = 50;  ///< 0 < centile < 100
    double value = 0;     ///< in the unit of the norm

    friend bool operator==(PrintedCentile const&, PrintedCentile const&) = default;
};

/// Where a value stands among printed centiles: a band of percent, 0 to 100. Between two of them it
/// is the band between them, nothing is interpolated; on one of them it is that centile; beyond the
/// outermost the band is open to 0 or 100. `printed` ascends strictly in both numbers.
[[nodiscard]] Band bracket(double value, std::vector<PrintedCentile> const& printed);

/// The bracket of everything in a band of values.
[[nodiscard]] Band bracket(Band values, std::vector<PrintedCentile> const& printed);

}  // namespace asterism::norms
