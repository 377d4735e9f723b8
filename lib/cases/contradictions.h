// SPDX-License-Identifier: MIT
#pragma once

#include "base/diagnostic.h"
#include "cases/case.h"

namespace asterism {

/// Reports, at both places, every pair of explicit statements that cannot both hold: a finding
/// two of present, absent and unsure, and a finding present below an ancestor stated absent. A side
/// or a family that is stated twice differently for one finding is reported too.
void check_contradictions(Case const& baby, Ontology const& ontology, Diagnostics& diagnostics);

}  // namespace asterism
