// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include <nlohmann/json_fwd.hpp>

#include "assess/assess.h"
#include "base/diagnostic.h"

namespace asterism::cli {

/// What is said instead of a verdict: the red flags that were recognised, and the problems.
nlohmann::ordered_json refusal_json(std::vector<Evidence> const& flags,
                                    Diagnostics const& diagnostics);

/// The red flags for a reader, a line each; empty when there are none.
std::string red_flag_text(std::vector<Evidence> const& flags);

/// Tells on stderr that there is no verdict, and why.
void report_refusal(Diagnostics const& diagnostics);

}  // namespace asterism::cli
