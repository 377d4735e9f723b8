// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <vector>

#include "ontology/measure.h"
#include "ontology/ontology.h"
#include "yaml/table.h"

namespace asterism {

/// What one ontology file may hold: any of the sections, each a list.
struct OntologySections {
    std::optional<OntologyHeader> header;
    std::vector<Region> regions;
    std::vector<ExamStep> steps;
    std::vector<Finding> findings;
    std::vector<Measure> measures;
    std::vector<Citation> citations;
    std::vector<Prevalence> prevalences;
    yaml::Node norms;  ///< read by the norms, which stand in a later room
};

/// The field table of an ontology file: reads it and describes it for schemas.
yaml::Table<OntologySections> const& ontology_file_table();

}  // namespace asterism
