// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "assess/assessment.h"
#include "base/truth.h"
#include "compile/compiled.h"
#include "norms/query.h"

namespace asterism {

/// A number known only to lie within two bounds.
using NumberBand = norms::Band;

/// One measure of a baby, taken or computed from two that were, with its margin and what every norm
/// that has the measure says of it.
struct MeasureReading {
    MeasuredValue measured;
    NumberBand value;                   ///< with the margin of the reading, in the measure's unit
    std::optional<NumberBand> z;        ///< by the preferred norm, margin included
    std::optional<NumberBand> centile;  ///< the same in percent
    std::string norm;                   ///< the preferred norm; empty when none applies
    std::string note;
    bool computed = false;
    NumberBand as_read{};                   ///< the value without the margin
    std::optional<NumberBand> z_as_read{};  ///< a band only over days or sexes not known
    std::optional<NumberBand> centile_as_read{};
    std::vector<norms::Answer> answers{};  ///< of every norm, in the order of the ontology
};

/// Every measure taken and every computed one whose two parts were, in the order of the case and
/// then of the ontology. Margins: half the instrument's resolution either way for tape and ruler;
/// scales, counts, rates and saturations are exact as read. A computed measure that was stated is
/// taken as stated.
std::vector<MeasureReading> read_margins(Ontology const& ontology,
                                         norms::Standards const& standards, Case const& baby);

/// The truth of a test on the readings; nothing when the measure was not taken or no norm applies.
std::optional<Truth> value_of(MeasureTest const& test, std::vector<MeasureReading> const& readings);

}  // namespace asterism
