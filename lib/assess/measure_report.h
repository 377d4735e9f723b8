// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "assess/measure_values.h"

namespace asterism {

/// What one norm says of one measure.
struct NormResult {
    std::string norm;
    std::string label;
    std::string population;
    std::string evidence;  ///< how its numbers were seen: full text, abstract, secondary, memory
    std::vector<std::string> sources;
    bool preferred = false;
    std::optional<NumberBand> z;              ///< of the value as read
    std::optional<NumberBand> z_with_margin;  ///< what cut-offs are compared with
    std::optional<NumberBand> centile;
    std::optional<NumberBand> centile_with_margin;
    std::string note;   ///< of this reading: limits crossed, what was assumed
    std::string about;  ///< of the norm: why it is preferred, what contradicts it
};

/// A norm of the measure that says nothing of this baby, and why.
struct NoNormResult {
    std::string norm;
    std::string reason;
};

/// A measure with every norm that has it, side by side in the order of the ontology.
struct MeasureReport {
    MeasureResult measure;
    bool soft = false;
    std::vector<NormResult> results;
    std::vector<NoNormResult> without;
};

/// One report a measure taken or computed. With `only_norm`, that norm alone.
std::vector<MeasureReport> measure_reports(Ontology const& ontology,
                                           norms::Standards const& standards, Case const& baby,
                                           std::string_view only_norm = {});

/// A reading as the assessment lists it.
MeasureResult measure_result(Ontology const& ontology, MeasureReading const& reading);

}  // namespace asterism
