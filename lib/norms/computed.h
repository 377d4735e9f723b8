// SPDX-License-Identifier: MIT
#pragma once

#include <optional>

#include "norms/band.h"
#include "norms/query.h"

namespace asterism::norms {

/// How a measure follows from two others. They are in one unit, and are the readings themselves,
/// never rounded ratios.
enum class Computation {
    ratio,                ///< a / b
    percent,              ///< 100 a / b
    mean,                 ///< (a + b) / 2
    difference,           ///< a - b
    absolute_difference,  ///< |a - b|
    z_difference          ///< z of a less z of b; see z_difference()
};

/// The computed value as a band over both bands. Nothing for a ratio to something not above 0, and
/// for z_difference, which needs readings.
[[nodiscard]] std::optional<Band> compute(Computation computation, Band a, Band b);

/// z of `a` less z of `b`, margins included, day by day and sex by sex: a baby has one gestation,
/// so the extremes of two bands do not meet. Nothing when the two readings are not of the same norm
/// or have no z-scores.
[[nodiscard]] std::optional<Band> z_difference(Reading const& a, Reading const& b);

}  // namespace asterism::norms
