// SPDX-License-Identifier: MIT
#include "batch/own_states.h"

#include <algorithm>

namespace asterism::batch {

namespace {

bool one_side(Sides sides) { return sides == Sides::left || sides == Sides::right; }

/// As in the engine: each measure that the derivation asks for was taken and can be compared.
bool decides(CompiledDerivation const& derivation, CompiledRulebook const& book,
             std::vector<std::optional<Truth>> const& tests) {
    return std::all_of(derivation.tests.begin(), derivation.tests.end(), [&](auto test) {
        return std::any_of(derivation.tests.begin(), derivation.tests.end(), [&](auto other) {
            bool const same = book.measure_tests[other].measure == book.measure_tests[test].measure;
            return same && tests[other].has_value();
        });
    });
}

}  // namespace

OwnStates::OwnStates(FastBook const& book)
    : book_(book),
      states_(book.ontology().findings.size()),
      is_touched_(book.ontology().findings.size(), 0) {}

void OwnStates::work_out(FastCase const& baby, std::vector<std::optional<Truth>> const& tests) {
    for (auto const id : touched_) is_touched_[id] = 0;
    touched_.clear();
    for (auto const& statement : baby.statements) note(statement);
    note_absent_below();
    if (!baby.measures.empty()) note_measures(tests);
    for (auto const id : touched_) states_[id].own = own(id, baby);
}

Touched& OwnStates::touch(FindingId id) {
    if (!is_touched_[id]) {
        is_touched_[id] = 1;
        touched_.push_back(id);
        states_[id] = Touched{};
    }
    return states_[id];
}

void OwnStates::note(FastStatement const& statement) {
    auto& state = touch(statement.finding);
    state.stated |= static_cast<std::uint8_t>(statement.stated);
    state.familial = state.familial || statement.familial;
    if (statement.stated == Stated::present)
        state.present_sides = state.present_sides | statement.sides;
    if (statement.stated == Stated::absent)
        state.absent_sides = state.absent_sides | statement.sides;
}

void OwnStates::note_absent_below() {
    auto const stated = touched_.size();
    for (std::size_t i = 0; i < stated; ++i) {
        auto const id = touched_[i];
        if (!states_[id].says(Stated::absent) || states_[id].absent_sides != Sides::not_said)
            continue;
        for (auto const below : book_.descendants(id)) touch(below).below_absent = true;
    }
}

void OwnStates::note_measures(std::vector<std::optional<Truth>> const& tests) {
    auto const& whole = book_.whole();
    for (auto const id : book_.measured()) {
        if (decides(*whole.derived[id], whole, tests)) touch(id).measured = true;
    }
}

Truth OwnStates::own(FindingId id, FastCase const& baby) const {
    auto const& state = states_[id];
    if (state.says(Stated::present)) return Truth::yes;
    if (state.says(Stated::absent))
        return one_side(state.absent_sides) ? unstated(id, baby) : Truth::no;
    return state.says(Stated::unsure) ? Truth::unknown : unstated(id, baby);
}

Truth OwnStates::unstated(FindingId id, FastCase const& baby) const {
    auto const& state = states_[id];
    auto const& finding = book_.brief(id);
    bool const sex_known = baby.sex == Sex::female || baby.sex == Sex::male;
    if (state.below_absent || state.measured) return Truth::no;
    if (sex_known && finding.sex != Sex::not_given && finding.sex != baby.sex) return Truth::no;
    if (baby.history_none && finding.history_region) return Truth::no;
    return baby.steps.has(finding.step) ? Truth::no : Truth::unknown;
}

}  // namespace asterism::batch
