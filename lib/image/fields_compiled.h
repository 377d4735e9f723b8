// SPDX-License-Identifier: MIT
#pragma once

#include "compile/compiled.h"
#include "image/fields_base.h"

namespace asterism {

ASTERISM_FIELDS(Literal, node, negated)
ASTERISM_PLAIN(Literal)
ASTERISM_FIELDS(Weighted, literal, weight)
ASTERISM_PLAIN(Weighted)
ASTERISM_FIELDS(Range, low, high, low_open, high_open)
ASTERISM_FIELDS(FindingTest, finding, side, grades)
ASTERISM_FIELDS(TallyTest, tally, threshold, at_most)
ASTERISM_FIELDS(MeasureTest, measure, statistic, range, norm)

void save(image::Writer& archive, CompiledCondition const& condition);
void load(image::Reader& archive, CompiledCondition& condition);

/// The literal, and the rest as a part of its own, which stays where it is until asked for.
void save(image::Writer& archive, Clause const& clause);
void load(image::Reader& archive, Clause& clause);

ASTERISM_FIELDS(Fact, kind, index, detail, node)
ASTERISM_PLAIN(Fact)
ASTERISM_FIELDS(CountedMember, finding, counts)
ASTERISM_PLAIN(CountedMember)
ASTERISM_FIELDS(CountedKey, key, counts, members, covered)
ASTERISM_FIELDS(Split, counted, unless)
ASTERISM_PLAIN(Split)
ASTERISM_FIELDS(CompiledItem, item, points, when)
ASTERISM_FIELDS(CompiledTally, id, label, span, count, keys, items, inputs, constellation)
ASTERISM_FIELDS(CompiledConstellation, syntax, service, total, groups, reached)
ASTERISM_FIELDS(CompiledSuggestion, service, urgency)
ASTERISM_PLAIN(CompiledSuggestion)
ASTERISM_FIELDS(CompiledFollowUp, action, from, to)
ASTERISM_FIELDS(CompiledRule, syntax, when, suggest, first_steps, follow_up, signs)
ASTERISM_FIELDS(CompiledClass, meaning, key, syntax)
ASTERISM_FIELDS(CompiledDerivation, syntax, when, tests)

/// What a compiled book holds beside its ontology, rulebook and standards.
template <class Archive>
void circuit_fields(Archive& archive, CompiledRulebook& value) {
    auto& [ontology, book, standards, circuit, facts, measure_tests, ranges, present, classes,
           derived, tallies, constellations, rules, splits, effective] = value;
    static_cast<void>(ontology), static_cast<void>(book), static_cast<void>(standards);
    static_cast<void>(effective);  // worked out again of the rulebook's header
    archive(circuit, facts, measure_tests, ranges, present, classes, derived, tallies,
            constellations, rules, splits);
}

}  // namespace asterism
