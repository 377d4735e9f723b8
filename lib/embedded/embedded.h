// SPDX-License-Identifier: MIT
/// The rulebook and the ontology that the program carries within itself.
#pragma once

#include <span>
#include <string_view>

namespace asterism::embedded {

/// One file as it stood in the project when the program was built.
struct File {
    /// Its path from the project's root, with forward slashes: "ontology/regions.yaml".
    std::string_view name;
    /// Its bytes, unchanged. Valid for the life of the program.
    std::string_view text;
};

/// Every YAML and CSV file below ontology/ and rules/, vignettes and the changelogs of rules/
/// included, in ascending order of name.
std::span<File const> files();

}  // namespace asterism::embedded
