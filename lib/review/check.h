// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>

#include "base/diagnostic.h"
#include "compile/compiled.h"

namespace asterism {

struct BookCounts {
    std::size_t findings = 0, steps = 0, classes = 0, rules = 0, constellations = 0, vignettes = 0,
                sources = 0;
};

BookCounts count_book(CompiledRulebook const& book);

/// Checks that need the whole compiled book: each red flag, alone with all else unknown and alone
/// with all else normal, makes some service `suggested`; no source is uncited; every finding of the
/// ontology is classed or is a neutral parent; every rule has a vignette that names it.
void check_book(CompiledRulebook const& book, Diagnostics& diagnostics);

}  // namespace asterism
