// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "base/diagnostic.h"
#include "cases/imported.h"

namespace asterism {

/// Reads GA4GH Phenopackets v2 (JSON, or JSON Lines): packets, the proband of a family, the members
/// of a cohort. What is seen is keyed on ids, never on labels. `diseases` and `interpretations`
/// hold the answer and never reach a case. A term that is not there is not examined, never normal.
/// Gestation at birth: see `loinc_gestation`. Version 1 is refused. Unknown members are warned of.
std::vector<ImportedCase> read_phenopackets(SourcePtr const& source, ImportContext const& context,
                                            Diagnostics& diagnostics);

}  // namespace asterism
