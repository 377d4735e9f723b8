// SPDX-License-Identifier: MIT
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "assess/assessment.h"
#include "cases/case.h"

namespace asterism {

/// An answer as a FHIR R4 Bundle of type collection: the Patient (no name), an Observation for each
/// recorded finding and measure, a draft ServiceRequest with intent proposal for each suggested
/// service, and a ClinicalImpression that sums up. No Condition, no constellation, no diagnosis.
nlohmann::ordered_json fhir_bundle(Assessment const& assessment, Case const& baby,
                                   Ontology const& ontology);

}  // namespace asterism
