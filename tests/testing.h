// SPDX-License-Identifier: MIT
/// What every test file includes: doctest, and the way to say that a test cannot run here.
#pragma once

#include <doctest/doctest.h>

#include <filesystem>
#include <optional>
#include <string_view>

namespace asterism::testing {

/// Notes that the running test case cannot run on this machine, and why. The case must then return.
/// A file with such a note and no failure is reported as skipped, with the reason.
void skip(std::string_view reason);

/// The file or folder `relative` below $ASTERISM_DATA (open phenopackets, HPO).
/// Where the variable is not set the test case is noted as skipped and nothing is returned;
/// where it is set and the file is missing the test case fails.
std::optional<std::filesystem::path> data_file(std::string_view relative);

/// The same below $ASTERISM_FACTS (norm tables, worked examples, terms).
std::optional<std::filesystem::path> facts_file(std::string_view relative);

}  // namespace asterism::testing
