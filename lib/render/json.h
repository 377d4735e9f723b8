// SPDX-License-Identifier: MIT
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "assess/assessment.h"
#include "base/diagnostic.h"

namespace asterism {

/// The diagnostics as a list of objects with code, severity, message, file, line, column, related,
/// help.
nlohmann::ordered_json diagnostics_json(Diagnostics const& diagnostics);

/// The whole assessment; the keys are a contract (DEVELOPERS.md).
nlohmann::ordered_json assessment_json(Assessment const& assessment);
nlohmann::ordered_json evidence_json(Evidence const& evidence);

/// Text of a document; ill-formed UTF-8 from outside is replaced, never thrown at the caller.
std::string json_text(nlohmann::ordered_json const& document);

}  // namespace asterism
