// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include <nlohmann/json_fwd.hpp>

#include "assess/measure_report.h"

namespace asterism {

/// The measures with all their norms, for people.
std::string measure_report_text(std::vector<MeasureReport> const& reports);

/// The same as one document, schema `asterism.measure/1`. With one measure its keys stand at the
/// top; with several, each stands under `measures`, and the top has those of the first.
nlohmann::ordered_json measure_report_json(std::vector<MeasureReport> const& reports);

}  // namespace asterism
