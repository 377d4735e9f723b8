// SPDX-License-Identifier: MIT
#pragma once

#include <functional>
#include <optional>
#include <string>

#include "compile/compiled.h"

namespace asterism {

/// The same baby with one more finding stated present, or nothing when the case excludes it (an
/// ancestor stated absent, the other sex).
std::optional<Case> with_finding(Case baby, CompiledRulebook const& book, FindingId finding);

/// The case with everything left out without which it is still wanted: statements, steps, measures,
/// sex, age, gestation, one at a time.
Case smallest(Case baby, std::function<bool(Case const&)> const& wanted);

/// The case as YAML that `assess` reads.
std::string case_yaml(Case const& baby, Ontology const& ontology);

}  // namespace asterism
