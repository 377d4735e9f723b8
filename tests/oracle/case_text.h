// SPDX-License-Identifier: MIT
#pragma once

#include <functional>
#include <string>

#include "cases/case.h"
#include "ontology/ontology.h"

namespace asterism::oracle {

/// The case as a file that `assess` reads, for the message of a failed comparison.
std::string case_text(Case const& baby, Ontology const& ontology);

/// The case with everything left out that `still_fails` does not need.
Case shrunk(Case baby, std::function<bool(Case const&)> const& still_fails);

}  // namespace asterism::oracle
