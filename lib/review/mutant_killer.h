// SPDX-License-Identifier: MIT
#pragma once

#include <string>

#include "review/mutant.h"
#include "review/sat/solver.h"

namespace asterism {

struct KillerSearch {
    bool none_exists = false;  ///< proven
    std::string method;        ///< how it was proven, or why nothing was found
    std::string vignette;      ///< one entry of `vignettes:` in YAML, without sources
};

/// Looks for a baby whom the book and its mutant answer differently. First the structure of both
/// circuits is compared; then a solver sets them against each other over shared facts. Babies found
/// are judged by the engine before they are offered. `none_exists` is said only when the solver
/// proved it for every baby a case can describe, counts that hang on something open included.
KillerSearch find_killer(CompiledRulebook const& book, CompiledRulebook const& mutant,
                         Mutant const& edit, sat::Limits const& limits);

}  // namespace asterism
