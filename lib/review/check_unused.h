// SPDX-License-Identifier: MIT
#pragma once

#include "base/diagnostic.h"
#include "compile/compiled.h"

namespace asterism {

/// Parts of the book that nothing asks for: services, counting keys, actions and derived findings
/// (warnings, `unused-...`); tallies and constellations, which are printed but decide nothing, and
/// counted findings whose class changes no answer (notes: `unused-tally`, `unused-constellation`,
/// `no-effect`).
void check_unused(CompiledRulebook const& book, Diagnostics& diagnostics);

}  // namespace asterism
