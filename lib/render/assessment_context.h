// SPDX-License-Identifier: MIT
#pragma once

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "cases/case.h"
#include "norms/standard.h"
#include "ontology/ontology.h"

namespace asterism {

/// A measure among the curves of its norm.
struct MeasureChart {
    std::string title;
    std::string svg;  ///< self-contained, of our own making
};

/// What a page needs beside the answer: the baby as recorded, and where on the body each finding
/// belongs. Everything is text as it was written; nothing is concluded here.
struct AssessmentContext {
    /// `sex`, `gestation at birth`, `age at the examination` ...: only what was recorded.
    std::vector<std::pair<std::string, std::string>> recorded;
    std::map<std::string, std::string> region_of_finding;  ///< finding id -> region id
    std::map<std::string, std::string> region_labels;      ///< region id -> label
    std::string history_region;                            ///< its id
    bool history_none = false;  ///< history was asked for and nothing was found
    std::vector<MeasureChart> charts;
};

/// Without charts, which only a page can show.
AssessmentContext context_of(Case const& baby, Ontology const& ontology);

/// A chart for each measure of which the preferred norm has curves.
std::vector<MeasureChart> charts_of(Case const& baby, Ontology const& ontology,
                                    norms::Standards const& standards);

}  // namespace asterism
