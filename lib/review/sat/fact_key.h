// SPDX-License-Identifier: MIT
#pragma once

#include "compile/compiled.h"

namespace asterism::sat {

/// What a fact says, apart from the book that asks: the same key in two books of one ontology is
/// the same fact of the same baby.
struct FactKey {
    Fact::Kind kind = Fact::Kind::finding;
    std::uint32_t index = 0;  ///< FindingId; MeasureId of a measure
    std::uint32_t grade = 0;
    MeasureTest test{};  ///< of a measure
    Range range{};       ///< of age and gestation

    friend auto operator<=>(FactKey const&, FactKey const&) = default;
};

FactKey key_of(CompiledRulebook const& book, Fact const& fact);
/// True when the fact speaks of a finding (its state, side, grade or family).
bool about_finding(FactKey const& key);

}  // namespace asterism::sat
