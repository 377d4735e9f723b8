// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <vector>

#include "assess/assessment.h"
#include "base/truth.h"
#include "compile/compiled.h"

namespace asterism {

/// A number known only to lie within two bounds.
struct NumberBand {
    double low = 0;
    double high = 0;
};

/// One measured value with its margin and, where a norm applies, its z and centile.
struct MeasureReading {
    MeasuredValue measured;
    NumberBand value;
    std::optional<NumberBand> z;
    std::optional<NumberBand> centile;
    std::string norm;
    std::string note;
};

/// Values with half the instrument's resolution either way for tape and ruler; counts, rates and saturations
/// are exact as published.
std::vector<MeasureReading> read_margins(CompiledRulebook const& book, Case const& baby);

/// The truth of a test on the readings; nothing when the measure was not taken or no norm applies.
std::optional<Truth> value_of(MeasureTest const& test, std::vector<MeasureReading> const& readings);

}  // namespace asterism
