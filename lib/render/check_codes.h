// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include <nlohmann/json_fwd.hpp>

#include "review/codes.h"

namespace asterism {

/// Pages of codes for a terminal: what it means, why it matters, how to mend it, an example.
std::string code_pages_text(std::vector<CodePage> const& pages);
/// `asterism.codes/1`.
nlohmann::ordered_json code_pages_json(std::vector<CodePage> const& pages);

}  // namespace asterism
