// SPDX-License-Identifier: MIT
#pragma once

#include <string_view>

#include <nlohmann/json_fwd.hpp>

#include "base/diagnostic.h"

namespace asterism {

/// The diagnostics as a log of the Static Analysis Results Interchange Format, SARIF 2.1.0 (OASIS
/// standard, 2020): one run, the codes met as rules with their pages. `loaded` says whether
/// everything could be read: when not, the log is whole all the same and says that the run was not
/// successful. A problem keeps its fingerprint when lines move.
nlohmann::ordered_json sarif_log(Diagnostics const& diagnostics, bool loaded,
                                 std::string_view version);

}  // namespace asterism
