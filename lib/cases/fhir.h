// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "base/diagnostic.h"
#include "cases/imported.h"

namespace asterism {

/// Reads FHIR R4 Bundles (JSON, or one a line): each Patient with its Observations and Conditions
/// is a case. An HPO code maps by id; a LOINC code of ours is a measure, the gestation or the age;
/// a code of another system maps only when its text is exactly a name of ours. What is refuted or
/// false is absent, what has a `dataAbsentReason` is not examined, what is resolved is not present.
/// A Condition that is no finding of ours, such as a diagnosis, is listed and never reaches a case.
std::vector<ImportedCase> read_fhir(SourcePtr const& source, ImportContext const& context,
                                    Diagnostics& diagnostics);

}  // namespace asterism
