// SPDX-License-Identifier: MIT
#include "assess/facts.h"

#include <algorithm>

#include "assess/verdicts.h"

namespace asterism {

namespace {

/// Works out the own state of every finding, in the order of precedence that the method `origin`
/// spells out.
class States {
public:
    States(CompiledRulebook const& book, Case const& baby,
           std::vector<MeasureReading> const& readings)
        : book_(book),
          ontology_(*book.ontology),
          baby_(baby),
          readings_(readings),
          states_(ontology_.findings.size()) {}

    std::vector<FindingState> work_out() {
        for (auto const& statement : baby_.present) note(statement, Origin::stated_present);
        for (auto const& statement : baby_.absent) note(statement, Origin::stated_absent);
        for (auto const& statement : baby_.unsure) note(statement, Origin::unsure);
        for (FindingId id = 0; id < states_.size(); ++id) {
            auto& state = states_[id];
            if (!state.statement || only_one_side_absent(state)) state.origin = origin(id);
            state.own = truth_of(state.origin);
        }
        return std::move(states_);
    }

private:
    void note(Statement const& statement, Origin origin) {
        auto& state = states_[statement.finding];
        if (origin == Origin::stated_present)
            state.present_sides = state.present_sides | statement.sides;
        if (origin == Origin::stated_absent)
            state.absent_sides = state.absent_sides | statement.sides;
        state.familial = state.familial || statement.familial;
        if (state.statement) return;
        state.statement = &statement;
        state.origin = origin;
    }

    /// "Absent on the left" says nothing of the right.
    static bool only_one_side_absent(FindingState const& state) {
        bool const one_side =
            state.absent_sides == Sides::left || state.absent_sides == Sides::right;
        return state.origin == Origin::stated_absent && one_side;
    }

    Origin origin(FindingId id) const {
        auto const& finding = ontology_.frame(id);
        if (ancestor_stated_absent(id)) return Origin::ancestor_absent;
        if (of_other_sex(finding)) return Origin::other_sex;
        if (baby_.history_none && ontology_.region_of(id).history) return Origin::history_none;
        if (decided_by_measure(id)) return Origin::decided_by_measure;
        return baby_.step_done[finding.step] ? Origin::implied_absent : Origin::not_examined;
    }

    bool ancestor_stated_absent(FindingId id) const {
        if (baby_.absent.empty()) return false;
        auto const ancestors = ontology_.ancestors(id);
        return std::any_of(ancestors.begin(), ancestors.end(), [&](FindingId a) {
            return states_[a].statement && states_[a].absent_sides == Sides::not_said &&
                   std::any_of(baby_.absent.begin(), baby_.absent.end(),
                               [&](Statement const& s) { return s.finding == a; });
        });
    }

    bool of_other_sex(FindingFrame const& finding) const {
        bool const known = baby_.sex == Sex::female || baby_.sex == Sex::male;
        return known && finding.sex != Sex::not_given && finding.sex != baby_.sex;
    }

    /// One of two measures alone would be false comfort: a dimple 3 mm wide may still be too far
    /// up. Each measure that the derivation asks for must have been taken, and one of its tests
    /// must have a norm.
    bool decided_by_measure(FindingId id) const {
        if (!book_.derived[id] || book_.derived[id]->tests.empty()) return false;
        auto const& tests = book_.derived[id]->tests;
        return std::all_of(tests.begin(), tests.end(), [&](std::uint32_t test) {
            return std::any_of(tests.begin(), tests.end(), [&](std::uint32_t other) {
                bool const same =
                    book_.measure_tests[other].measure == book_.measure_tests[test].measure;
                return same && value_of(book_.measure_tests[other], readings_).has_value();
            });
        });
    }

    static Truth truth_of(Origin origin) {
        switch (origin) {
            case Origin::stated_present: return Truth::yes;
            case Origin::unsure:
            case Origin::not_examined: return Truth::unknown;
            default: return Truth::no;
        }
    }

    CompiledRulebook const& book_;
    Ontology const& ontology_;
    Case const& baby_;
    std::vector<MeasureReading> const& readings_;
    std::vector<FindingState> states_;
};

/// Gives each fact of the circuit its truth.
class FactValues {
public:
    FactValues(CompiledRulebook const& book, Case const& baby, CaseFacts const& facts, Rest rest)
        : book_(book), baby_(baby), facts_(facts), rest_(rest) {}

    Truth operator()(Fact const& fact) const {
        switch (fact.kind) {
            case Fact::Kind::finding: return finding(fact.index);
            case Fact::Kind::history_assumed:
                return truth(facts_.states[fact.index].own == Truth::yes);
            case Fact::Kind::left: return side(fact.index, Sides::left);
            case Fact::Kind::right: return side(fact.index, Sides::right);
            case Fact::Kind::grade: return grade(fact.index, fact.detail);
            case Fact::Kind::familial: return truth(facts_.states[fact.index].familial);
            case Fact::Kind::measure: return measured(fact.detail).value_or(missing());
            case Fact::Kind::measure_by_eye: return measured(fact.detail).value_or(Truth::no);
            case Fact::Kind::measure_red_flag:
                return truth(measured(fact.detail).value_or(Truth::no) != Truth::no);
            case Fact::Kind::age: return within(fact.detail, baby_.age);
            case Fact::Kind::gestation: return gestation(fact.detail);
            case Fact::Kind::female: return is_sex(Sex::female);
            case Fact::Kind::male: return is_sex(Sex::male);
        }
        return Truth::unknown;
    }

private:
    Truth missing() const { return rest_ == Rest::normal ? Truth::no : Truth::unknown; }

    bool can_be_examined(FindingId id) const { return !book_.ontology->frame(id).history; }

    Truth finding(FindingId id) const {
        auto const own = facts_.states[id].own;
        return own == Truth::unknown && can_be_examined(id) ? missing() : own;
    }

    /// A side or a grade of something that is not stated present; what nobody told is not assumed.
    Truth detail_of_absent(FindingId id) const {
        return can_be_examined(id) ? finding(id) : Truth::no;
    }

    Truth side(FindingId id, Sides wanted) const {
        auto const& state = facts_.states[id];
        if (has(state.present_sides, wanted)) return Truth::yes;
        if (has(state.absent_sides, wanted)) return Truth::no;
        if (state.own != Truth::yes) return detail_of_absent(id);
        // Present: on the sides said, or on a side that nobody wrote down.
        if (state.present_sides == Sides::not_said) return Truth::unknown;
        return baby_.step_done[book_.ontology->frame(id).step] ? Truth::no : missing();
    }

    Truth grade(FindingId id, std::uint32_t wanted) const {
        auto const& state = facts_.states[id];
        if (state.own != Truth::yes) return detail_of_absent(id);
        Truth result = Truth::no;
        for (auto const& statement : baby_.present) {
            if (statement.finding == id)
                result =
                    result | (statement.grade ? truth(*statement.grade == wanted) : Truth::unknown);
        }
        return result;
    }

    std::optional<Truth> measured(std::uint32_t test) const {
        return value_of(book_.measure_tests[test], facts_.readings);
    }

    Truth within(std::uint32_t range, std::optional<Duration> const& age) const {
        return age ? book_.ranges[range].contains(age->hours, age->hours) : Truth::unknown;
    }

    Truth gestation(std::uint32_t range) const {
        if (!baby_.gestation) return Truth::unknown;
        return book_.ranges[range].contains(baby_.gestation->min_days, baby_.gestation->max_days);
    }

    Truth is_sex(Sex wanted) const {
        bool const known = baby_.sex == Sex::female || baby_.sex == Sex::male;
        return known ? truth(baby_.sex == wanted) : Truth::unknown;
    }

    CompiledRulebook const& book_;
    Case const& baby_;
    CaseFacts const& facts_;
    Rest rest_;
};

/// Gives the circuit what the states and readings say.
void fill_in(CompiledRulebook const& book, Case const& baby, Rest rest, CaseFacts& facts) {
    facts.values.assign(book.circuit.size(), Truth::no);
    FactValues const value(book, baby, facts, rest);
    for (auto const& fact : book.facts) facts.values[fact.node] = value(fact);
    book.circuit.evaluate(facts.values);
    facts.counted = with_splits_closed(book, facts.values);
}

}  // namespace

CaseFacts evaluate(CompiledRulebook const& book, Case const& baby, Rest rest) {
    CaseFacts facts;
    facts.readings = read_margins(*book.ontology, *book.standards, baby);
    facts.states = States(book, baby, facts.readings).work_out();
    fill_in(book, baby, rest, facts);
    return facts;
}

CaseFacts with_rest(CompiledRulebook const& book, Case const& baby, CaseFacts facts, Rest rest) {
    fill_in(book, baby, rest, facts);
    return facts;
}

}  // namespace asterism
