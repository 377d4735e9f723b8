// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "base/diagnostic.h"
#include "cases/case.h"
#include "yaml/node.h"

namespace asterism {

/// Reads `measures: { name: number unit }`: resolves the name, converts to the measure's unit and
/// checks the plausible range. A value in the wrong unit is refused with the unit that would make
/// it plausible.
std::vector<MeasuredValue> read_measures(yaml::Node const& node, Ontology const& ontology,
                                         Diagnostics& diagnostics);

/// One value of one measure, as above.
std::optional<MeasuredValue> read_measure(Word const& name, Word const& value,
                                          Ontology const& ontology, Diagnostics& diagnostics);

}  // namespace asterism
