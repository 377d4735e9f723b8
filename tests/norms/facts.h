// SPDX-License-Identifier: MIT
/// Where the collection of outside numbers is.
#pragma once

#include <cstdlib>
#include <filesystem>
#include <optional>
#include <string_view>

#include "testing.h"

namespace asterism::norms {

/// A file below $ASTERISM_FACTS or, where that is not set, below ../shared/facts beside the
/// project. Where neither is there the test case is noted as skipped and nothing is returned.
inline std::optional<std::filesystem::path> facts(std::string_view relative) {
    auto const beside = std::filesystem::path("../shared/facts") / relative;
    if (std::getenv("ASTERISM_FACTS") == nullptr && std::filesystem::exists(beside)) return beside;
    return testing::facts_file(relative);
}

}  // namespace asterism::norms
