// SPDX-License-Identifier: MIT
#pragma once

#include "assess/measure_values.h"

namespace asterism {

/// Adds every computed measure whose two parts are among the readings and which was not stated
/// itself. It is worked out from the readings as taken, and its band from their margins.
void add_computed(Ontology const& ontology, norms::Standards const& standards, Case const& baby,
                  std::vector<MeasureReading>& readings);

}  // namespace asterism
