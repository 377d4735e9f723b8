// SPDX-License-Identifier: MIT
/// The newborn book and its ontology as they stand in the project, and cases written for them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "cases/case.h"
#include "compile/compiled.h"

namespace asterism::testing {

/// The .yaml and .csv files below a folder, in order of path; released books are left out.
std::vector<SourcePtr> files_below(std::string const& folder);

/// rules/newborn over ontology, loaded once. The test case fails, with the first problems, when
/// they do not load.
CompiledRulebook const& shipped_book();

/// A case written in YAML or JSON; the test case fails when it has an error.
Case case_from(std::string text);

/// The finding with this id; the test case fails when the ontology has none.
FindingId finding(std::string_view id);

/// How the book classes a finding, in the book's words; `none` when it does not.
std::string class_text(FindingId id);

}  // namespace asterism::testing
