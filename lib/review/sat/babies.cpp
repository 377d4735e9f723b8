// SPDX-License-Identifier: MIT
#include "review/sat/babies.h"

#include <algorithm>

namespace asterism::sat {

namespace {

constexpr auto yes = Truth::yes;
constexpr auto no = Truth::no;
constexpr auto unknown = Truth::unknown;

FactKey about(Fact::Kind kind, FindingId finding) { return {kind, finding, 0, {}, {}}; }

}  // namespace

Babies::Babies(Solver& solver, std::vector<CompiledRulebook const*> const& books)
    : solver_(solver), ontology_(*books.front()->ontology), books_(books) {
    for (FindingId id = 0; id < ontology_.findings.size(); ++id)
        own_.push_back(add(about(Fact::Kind::finding, id)));
    for (std::size_t step = 0; step < ontology_.steps.size(); ++step) {
        done_.push_back(solver_.add_variable());
        solver_.prefer(-done_.back());
    }
    for (auto const* book : books) collect(*book);
    add_sex();
    add_times();
    add_measures();
    add_findings();
}

void Babies::collect(CompiledRulebook const& book) {
    for (auto const& fact : book.facts) add(key_of(book, fact));
}

/// Unknown is tried first: a model then says little more than it must.
TruthVars Babies::add(FactKey const& key) {
    if (auto const known = facts_.find(key); known != facts_.end()) return known->second;
    auto const truth = add_truth(solver_);
    bool const two_valued =
        key.kind == Fact::Kind::familial || key.kind == Fact::Kind::history_assumed;
    prefer(truth, two_valued ? no : unknown);
    return facts_.emplace(key, truth).first->second;
}

void Babies::prefer(TruthVars truth, Truth value) {
    solver_.prefer(value == yes ? truth.yes : -truth.yes);
    solver_.prefer(value == no ? -truth.possible : truth.possible);
}

TruthVars const* Babies::find(FactKey const& key) const {
    auto const known = facts_.find(key);
    return known == facts_.end() ? nullptr : &known->second;
}

std::vector<TruthVars> Babies::by_node(CompiledRulebook const& book) const {
    std::vector<TruthVars> result(book.circuit.size());
    for (auto const& fact : book.facts) result[fact.node] = facts_.at(key_of(book, fact));
    return result;
}

void Babies::add_findings() {
    for (FindingId id = 0; id < own_.size(); ++id) {
        add_absent_ancestor(id);
        add_history(id);
        add_sides(id);
        add_grades(id);
        if (auto const* familial = find(about(Fact::Kind::familial, id))) {
            solver_.add_clause({-familial->possible, familial->yes});
            solver_.add_clause({-familial->yes, own_[id].yes});
        }
    }
}

/// What is absent without its step being done is stated absent, and then everything below it is
/// absent too; unless the sex or a measure rules it out.
void Babies::add_absent_ancestor(FindingId ancestor) {
    auto const& finding = ontology_.at(ancestor);
    std::vector<Lit> clause{own_[ancestor].possible, done_[finding.step]};
    if (finding.sex != Sex::not_given) {
        auto const other = finding.sex == Sex::female ? Fact::Kind::male : Fact::Kind::female;
        clause.push_back(add(about(other, 0)).yes);
    }
    for (auto const* book : books_) {
        if (book->derived[ancestor] && !book->derived[ancestor]->tests.empty())
            clause.push_back(decided_by_measures(*book, ancestor));
    }
    for (auto const below : ontology_.descendants(ancestor)) {
        clause.push_back(-own_[below].possible);
        solver_.add_clause(clause);
        clause.pop_back();
    }
}

/// Each measure that the derivation asks for has a reading on some scale.
Lit Babies::decided_by_measures(CompiledRulebook const& book, FindingId finding) {
    std::vector<Lit> all;
    for (auto const test : book.derived[finding]->tests) {
        std::vector<Lit> read;
        for (auto const& group : measures_[book.measure_tests[test].measure])
            read.push_back(-group.chosen.front());
        all.push_back(disjunction(solver_, read));
        solver_.prefer(-all.back());
    }
    auto const decided = conjunction(solver_, all);
    solver_.prefer(-decided);
    return decided;
}

bool Babies::measure_can_decide(FindingId finding) const {
    return std::any_of(books_.begin(), books_.end(), [&](CompiledRulebook const* book) {
        return book->derived[finding] && !book->derived[finding]->tests.empty();
    });
}

/// Where nobody asked for a history item to be known, "not recorded" is read as not present.
void Babies::add_history(FindingId finding) {
    auto const* assumed = find(about(Fact::Kind::history_assumed, finding));
    if (!assumed) return;
    solver_.add_clause({-assumed->possible, own_[finding].yes});
    solver_.add_clause({-own_[finding].yes, assumed->yes});
}

void Babies::add_sides(FindingId finding) {
    auto const left = about(Fact::Kind::left, finding);
    auto const right = about(Fact::Kind::right, finding);
    if (!find(left) && !find(right)) return;
    auto const l = add(left);
    auto const r = add(right);
    auto const own = own_[finding];
    auto const done = done_[ontology_.at(finding).step];
    // Not both absent unless the finding is; a side left open beside one that is there means the
    // step is not done.
    solver_.add_clause(
        {ontology_.at(finding).history ? -own.yes : -own.possible, l.possible, r.possible});
    solver_.add_clause({-l.yes, r.yes, -r.possible, -done});
    solver_.add_clause({-r.yes, l.yes, -l.possible, -done});
    // Present, and not on one side: then it is stated of the other.
    solver_.add_clause({-own.yes, l.possible, r.yes});
    solver_.add_clause({-own.yes, r.possible, l.yes});
    add_absent_sides(finding, left);
    add_absent_sides(finding, right);
}

void Babies::add_absent_sides(FindingId finding, FactKey const& key) {
    auto const side = fact(key);
    auto const own = own_[finding];
    auto const done = done_[ontology_.at(finding).step];
    solver_.add_clause({own.yes, -side.yes});
    solver_.add_clause({own.possible, -side.possible});
    if (ontology_.at(finding).history) {
        solver_.add_clause({own.yes, -side.possible});
        return;
    }
    // Absent on one side and open as a whole: stated so, and then nothing below it is there on that
    // side.
    solver_.add_clause({own.yes, -own.possible, side.possible, -done});
    for (auto const below : ontology_.descendants(finding)) {
        auto const* same = find({key.kind, below, 0, {}, {}});
        if (same) solver_.add_clause({-own.possible, side.possible, done, -same->yes});
    }
}

/// A present finding has one grade or none recorded; an absent one has none.
void Babies::add_grades(FindingId finding) {
    std::vector<TruthVars> grades;
    for (std::uint32_t grade = 0; grade < ontology_.at(finding).grades.size(); ++grade) {
        if (auto const* asked = find({Fact::Kind::grade, finding, grade, {}, {}}))
            grades.push_back(*asked);
    }
    bool const all = grades.size() == ontology_.at(finding).grades.size();
    auto const own = own_[finding];
    std::vector<Lit> some{-own.yes};
    for (std::size_t i = 0; i < grades.size(); ++i) {
        solver_.add_clause({own.yes, -grades[i].yes});
        solver_.add_clause({own.possible, -grades[i].possible});
        bool const told = ontology_.at(finding).history;
        solver_.add_clause({own.yes, told ? -grades[i].possible : -own.possible,
                            told ? -grades[i].possible : grades[i].possible});
        some.push_back(grades[i].possible);
        for (std::size_t k = 0; k < grades.size(); ++k) {
            if (k == i) continue;
            // Known of one means known of all.
            solver_.add_clause({-own.yes, -grades[i].yes, -grades[k].possible});
            solver_.add_clause({-own.yes, grades[i].possible, grades[k].yes, -grades[k].possible});
        }
    }
    if (all && !grades.empty()) solver_.add_clause(some);
}

void Babies::add_group(Group group) {
    std::vector<Lit> some;
    for (std::size_t i = 0; i < group.keys.size(); ++i)
        prefer(fact(group.keys[i]), group.patterns.front()[i]);
    for (auto const& pattern : group.patterns) {
        auto const chosen = solver_.add_variable();
        solver_.prefer(some.empty() ? chosen : -chosen);  // the first pattern knows nothing
        some.push_back(chosen);
        group.chosen.push_back(chosen);
        for (std::size_t i = 0; i < pattern.size(); ++i) {
            auto const truth = fact(group.keys[i]);
            solver_.add_clause({-chosen, pattern[i] == yes ? truth.yes : -truth.yes});
            solver_.add_clause({-chosen, pattern[i] == no ? -truth.possible : truth.possible});
        }
    }
    solver_.add_clause(some);
    for (auto const& key : group.keys) {
        if (key.kind == Fact::Kind::age)
            age_ = group;
        else if (key.kind == Fact::Kind::gestation)
            gestation_ = group;
        else if (key.kind == Fact::Kind::female)
            sex_ = group;
        else if (!about_finding(key) && key.kind != Fact::Kind::male) {
            measures_[key.index].push_back(group);
            return;
        }
    }
}

/// A finding that only one sex can have is absent in the other.
void Babies::add_sex() {
    auto const female = about(Fact::Kind::female, 0);
    auto const male = about(Fact::Kind::male, 0);
    add(female);
    add(male);
    add_group({{female, male}, {{unknown, unknown}, {yes, no}, {no, yes}}, {}});
    for (FindingId id = 0; id < own_.size(); ++id) {
        auto const sex = ontology_.at(id).sex;
        if (sex == Sex::female) solver_.add_clause({-fact(male).yes, -own_[id].possible});
        if (sex == Sex::male) solver_.add_clause({-fact(female).yes, -own_[id].possible});
    }
}

}  // namespace asterism::sat
