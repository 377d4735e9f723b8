// SPDX-License-Identifier: MIT
#include "batch/own_states.h"

#include <algorithm>
#include <bit>

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

std::uint8_t way_of(FastStatement const& statement) {
    if (statement.grade != FastStatement::no_grade) return Touched::no_way;
    auto const stated = std::countr_zero(static_cast<unsigned>(statement.stated));
    auto const sides = static_cast<unsigned>(statement.sides);
    return static_cast<std::uint8_t>(stated * 8 + sides * 2 + (statement.familial ? 1 : 0));
}

}  // namespace

OwnStates::OwnStates(FastBook const& book)
    : book_(book),
      states_(book.ontology().findings.size()),
      is_touched_(book.ontology().findings.size(), 0),
      in_step_(book.ontology().steps.size(), 0) {}

Touched& OwnStates::touch(FindingId id) {
    if (!is_touched_[id]) {
        is_touched_[id] = 1;
        touched_.push_back(id);
        ++in_step_[book_.brief(id).step];
        states_[id] = Touched{};
    }
    return states_[id];
}

void OwnStates::begin() {
    for (auto const id : touched_) {
        is_touched_[id] = 0;
        in_step_[book_.brief(id).step] = 0;
    }
    touched_.clear();
    together_.clear();
    alone_.clear();
    steps_.clear();
}

void OwnStates::end(FastCase const& baby) {
    for (auto const id : together_) states_[id].own = own(id, baby);
}

void OwnStates::start(FastCase const& baby, std::size_t start) {
    begin();
    note_sex_and_history(baby, start);
    together_ = touched_;
    end(baby);
}

void OwnStates::step(FastCase const& baby, StepId step) {
    begin();
    for (auto const id : book_.findings_of(step)) touch(id);
    together_ = touched_;
    end(baby);
}

void OwnStates::statements(FastCase const& baby) {
    begin();
    for (auto const& statement : baby.statements) note(statement);
    together_ = touched_;
    end(baby);
}

void OwnStates::work_out(FastCase const& baby, std::size_t start,
                         std::vector<std::optional<Truth>> const& tests) {
    begin();
    for (auto const& statement : baby.statements) note(statement);
    note_absent_below();
    if (!baby.measures.empty()) note_measures(tests);
    note_steps(baby, book_.steps(start));
    sort_out();
    end(baby);
}

void OwnStates::sort_out() {
    for (auto const id : touched_) {
        auto const& state = states_[id];
        bool const alone = state.way != Touched::no_way && !state.below_absent && !state.measured;
        auto& list = alone && in_step_[book_.brief(id).step] == 1 ? alone_ : together_;
        list.push_back(id);
    }
}

void OwnStates::note(FastStatement const& statement) {
    bool const first = !is_touched_[statement.finding];
    auto& state = touch(statement.finding);
    state.way = first ? way_of(statement) : Touched::no_way;
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

void OwnStates::note_steps(FastCase const& baby, StepSet const& start) {
    auto const& have = baby.steps.words();
    for (std::size_t word = 0; word < have.size(); ++word) {
        for (auto differs = have[word] ^ start.words()[word]; differs != 0; differs &= differs - 1)
            note_step(static_cast<StepId>(word * 64 + std::countr_zero(differs)));
    }
}

void OwnStates::note_step(StepId step) {
    if (in_step_[step] == 0) return steps_.push_back(step);
    ++in_step_[step];
    for (auto const id : book_.findings_of(step)) touch(id);
}

void OwnStates::note_sex_and_history(FastCase const& baby, std::size_t start) {
    if (baby.sex == Sex::female || baby.sex == Sex::male) {
        for (auto const id : book_.of_one_sex(start)) touch(id);
    }
    if (!baby.history_none) return;
    for (auto const id : book_.essential_history()) touch(id);
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
