// SPDX-License-Identifier: MIT
#pragma once

#include "base/diagnostic.h"
#include "compile/compiled.h"

namespace asterism {

/// Parts of the book that nothing asks for: services, counting keys, actions, tallies and
/// constellations (`unused-...`) and counted findings whose class changes no answer (`no-effect`),
/// all notes, since a book that grows has such parts for a while; derived findings that are
/// concluded for nothing (`unused-derivation`, a warning).
void check_unused(CompiledRulebook const& book, Diagnostics& diagnostics);

}  // namespace asterism
