// SPDX-License-Identifier: MIT
#pragma once

#include "base/diagnostic.h"
#include "compile/compiled.h"

namespace asterism {

/// Every class, derivation, constellation, rule and vignette cites sources that the bibliography
/// knows; keys cover keys that exist.
void check_references(Rulebook const& book, Ontology const& ontology, Diagnostics& diagnostics);

/// Classes that cannot mean what they say: a child milder than its ancestor, a chain with two keys,
/// a minor variant or major anomaly without a key, a history item with a class.
void check_classes(CompiledRulebook const& book, Diagnostics& diagnostics);

/// A derivation in which a measure stands under a negation: a number nobody took reads there as
/// past no cut-off, so the finding would be derived from what is not known and taken back once it
/// is measured.
void check_derivations(CompiledRulebook const& book, Diagnostics& diagnostics);

}  // namespace asterism
