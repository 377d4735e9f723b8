// SPDX-License-Identifier: MIT
#pragma once

#include "compile/compiled.h"

namespace asterism {

/// `compile` with the standards of the same ontology read before: most of the time of compiling a
/// book goes into reading them.
std::optional<CompiledRulebook> recompile(std::shared_ptr<Rulebook const> book,
                                          std::shared_ptr<Ontology const> ontology,
                                          std::shared_ptr<norms::Standards const> standards,
                                          Diagnostics& diagnostics);

}  // namespace asterism
