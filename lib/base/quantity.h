// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/time.h"

namespace asterism {

/// A number with a unit as it was written; `step` is the size of its last printed digit, in the
/// same unit.
struct Quantity {
    double value = 0;
    double step = 1;
    std::string unit;
};

/// Reads `31.0 cm`, `2610 g`, `6 lb 4 oz`, `96 %`, `148 /min`. The unit may be missing (`unit` is
/// then empty); pounds and ounces become pounds.
Parsed<Quantity> parse_quantity(std::string_view text);

/// The factor from one unit to another of the same kind (mm, cm, in; g, kg, lb, oz; and units equal
/// to themselves); nothing when they measure different things.
std::optional<double> conversion(std::string_view from, std::string_view to);

/// The spelling used by the project for a unit written in any usual way (`mms` is not usual): `bpm`
/// -> `/min`.
std::string canonical_unit(std::string_view unit);

}  // namespace asterism
