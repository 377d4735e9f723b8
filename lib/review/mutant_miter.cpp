// SPDX-License-Identifier: MIT
#include "review/mutant_miter.h"

#include <algorithm>
#include <numeric>

#include "assess/verdicts.h"
#include "review/sat/totalizer.h"

namespace asterism {

namespace {

using sat::Lit;

/// True only when the two differ.
Lit unlike(sat::Solver& solver, Lit a, Lit b) {
    auto const result = solver.add_variable();
    solver.add_clause({-result, a, b});
    solver.add_clause({-result, -a, -b});
    return result;
}

/// Takes away what both lists hold.
void cancel(std::vector<Weighted>& a, std::vector<Weighted>& b) {
    std::sort(a.begin(), a.end());
    std::sort(b.begin(), b.end());
    std::vector<Weighted> only_a, only_b;
    std::set_difference(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(only_a));
    std::set_difference(b.begin(), b.end(), a.begin(), a.end(), std::back_inserter(only_b));
    a = std::move(only_a);
    b = std::move(only_b);
}

std::vector<sat::WeightedLit> yes_of(sat::CircuitCnf& circuit, std::vector<Weighted> const& list) {
    std::vector<sat::WeightedLit> result;
    for (auto const& input : list) result.push_back({circuit.at(input.literal).yes, input.weight});
    return result;
}

std::int64_t total(std::vector<Weighted> const& list) {
    return std::accumulate(list.begin(), list.end(), std::int64_t{0},
                           [](std::int64_t sum, Weighted const& one) { return sum + one.weight; });
}

Lit reaches(sat::Solver& solver, std::vector<sat::WeightedLit> const& list, std::int64_t sum,
            std::int64_t all) {
    return sum > all ? -solver.always() : sat::at_least(solver, sum, list);
}

/// True only when the known sums differ.
void unlike_sums(sat::Solver& solver, sat::CircuitCnf& circuit, std::vector<Weighted> const& a,
                 std::vector<Weighted> const& b, std::vector<Lit>& out) {
    auto const of_a = yes_of(circuit, a);
    auto const of_b = yes_of(circuit, b);
    std::set<std::int64_t> sums;
    for (auto const* list : {&a, &b}) {
        std::set<std::int64_t> reached{0};
        for (auto const& input : *list) {
            auto const before = reached;
            for (auto const sum : before) reached.insert(sum + input.weight);
        }
        sums.insert(reached.upper_bound(0), reached.end());
    }
    for (auto const sum : sums)
        out.push_back(unlike(solver, reaches(solver, of_a, sum, total(a)),
                             reaches(solver, of_b, sum, total(b))));
}

/// Whether the measure of a test is the difference or mean of two that other tests of the
/// derivation read: then it is read whenever they are.
bool follows(CompiledRulebook const& book, CompiledDerivation const& derived,
             MeasureTest const& test) {
    auto const& computed = book.ontology->measures[test.measure].computed;
    if (!computed || test.statistic != Statistic::value) return false;
    bool const always = computed->formula == Formula::difference ||
                        computed->formula == Formula::absolute_difference ||
                        computed->formula == Formula::mean;
    auto const read = [&](MeasureId measure) {
        return std::any_of(derived.tests.begin(), derived.tests.end(), [&](std::uint32_t other) {
            return book.measure_tests[other].measure == measure;
        });
    };
    return always && read(computed->first) && read(computed->second);
}

/// What the tests of a derivation measure, apart from the numbers and from what follows.
std::set<std::tuple<MeasureId, Statistic, std::string>> scales(CompiledRulebook const& book,
                                                               FindingId finding) {
    std::set<std::tuple<MeasureId, Statistic, std::string>> result;
    if (!book.derived[finding]) return result;
    for (auto const index : book.derived[finding]->tests) {
        auto const& test = book.measure_tests[index];
        if (!follows(book, *book.derived[finding], test))
            result.emplace(test.measure, test.statistic, test.norm);
    }
    return result;
}

/// True when one of them is known to hold, or may hold.
Lit any(sat::Solver& solver, sat::CircuitCnf& circuit, std::vector<Literal> const& list,
        Lit sat::TruthVars::*part) {
    std::vector<Lit> result;
    for (auto const literal : list) result.push_back(circuit.at(literal).*part);
    return disjunction(solver, result);
}

}  // namespace

JoinedBooks::JoinedBooks(CompiledRulebook const& book, CompiledRulebook const& mutant)
    : book_(book), mutant_(mutant) {
    add(book_, of_book_);
    add(mutant_, of_mutant_);
}

JoinedBooks::JoinedBooks(JoinedBooks const& plain, std::set<NodeId> cut)
    : book_(plain.book_), mutant_(plain.mutant_), plain_(&plain), cut_(std::move(cut)) {
    add(book_, of_book_);
    add(mutant_, of_mutant_);
}

void JoinedBooks::add(CompiledRulebook const& book, std::vector<Literal>& nodes) {
    std::map<NodeId, sat::FactKey> keys;
    for (auto const& fact : book.facts) keys.emplace(fact.node, sat::key_of(book, fact));
    for (NodeId node = 0; node < book.circuit.size(); ++node) {
        if (plain_) {
            auto const& all = &book == &book_ ? plain_->of_book_ : plain_->of_mutant_;
            auto const there = all[node];
            if (cut_.contains(there.node)) {
                auto [known, fresh] = cut_facts_.try_emplace(there.node, 0);
                if (fresh) known->second = circuit_.add_fact();
                nodes.push_back({known->second, there.negated});
                continue;
            }
        }
        if (book.circuit.is_fact(node)) {
            auto [known, fresh] = facts_.try_emplace(keys.at(node), 0);
            if (fresh) known->second = circuit_.add_fact();
            nodes.push_back({known->second, false});
            continue;
        }
        std::vector<Weighted> inputs;
        for (auto const& input : book.circuit.inputs(node)) {
            auto const literal = nodes[input.literal.node];
            inputs.push_back({input.literal.negated ? !literal : literal, input.weight});
        }
        nodes.push_back(circuit_.add_gate(book.circuit.threshold(node), std::move(inputs)));
    }
}

Literal JoinedBooks::joined(CompiledRulebook const& book, Literal literal) const {
    auto const& nodes = &book == &book_ ? of_book_ : of_mutant_;
    return literal.negated ? !nodes[literal.node] : nodes[literal.node];
}

JoinedBooks::Difference JoinedBooks::difference() const {
    Difference out;
    auto const truths = [&](CompiledCondition const& a, CompiledCondition const& b) {
        auto const one = joined(book_, a.literal);
        auto const other = joined(mutant_, b.literal);
        if (one != other) out.truths.emplace_back(one, other);
    };
    for (std::size_t i = 0; i < book_.rules.size(); ++i)
        truths(book_.rules[i].when, mutant_.rules[i].when);
    for (std::size_t i = 0; i < book_.constellations.size(); ++i)
        truths(book_.constellations[i].reached, mutant_.constellations[i].reached);
    for (FindingId id = 0; id < book_.present.size(); ++id) {
        auto const one = joined(book_, book_.present[id]);
        auto const other = joined(mutant_, mutant_.present[id]);
        if (book_.class_of(id) && one != other) out.truths.emplace_back(one, other);
    }
    for (std::size_t i = 0; i < book_.tallies.size(); ++i) {
        auto a = book_.tallies[i].inputs;
        auto b = mutant_.tallies[i].inputs;
        for (auto& input : a) input.literal = joined(book_, input.literal);
        for (auto& input : b) input.literal = joined(mutant_, input.literal);
        cancel(a, b);
        if (!a.empty() || !b.empty()) out.sums.emplace_back(std::move(a), std::move(b));
    }
    compare_suggestions(out);
    return out;
}

/// A rule that now speaks of another service is named by it whenever it holds; one that speaks
/// sooner or later is noticed where no other rule is as urgent.
void JoinedBooks::compare_suggestions(Difference& out) const {
    auto const at_least = [&](CompiledRulebook const& book, ServiceId service, Urgency urgency) {
        std::vector<Literal> result;
        for (auto const& rule : book.rules) {
            auto const said = urgency_for(rule, service);
            if (said && *said >= urgency) result.push_back(joined(book, rule.when.literal));
        }
        return result;
    };
    for (std::size_t i = 0; i < book_.rules.size(); ++i) {
        for (ServiceId service = 0; service < book_.book->services.size(); ++service) {
            auto const before = urgency_for(book_.rules[i], service);
            auto const after = urgency_for(mutant_.rules[i], service);
            if (before == after) continue;
            if (!before || !after)
                out.reasons.push_back({{joined(book_, book_.rules[i].when.literal)}, {}});
            for (auto const level : {Urgency::urgent, Urgency::same_day, Urgency::emergency})
                out.reasons.push_back(
                    {at_least(book_, service, level), at_least(mutant_, service, level)});
        }
    }
}

std::vector<std::pair<Literal, Literal>> JoinedBooks::splits_of(
    CompiledRulebook const& book) const {
    std::vector<std::pair<Literal, Literal>> result;
    for (auto const& split : book.splits)
        result.emplace_back(joined(book, split.counted), joined(book, split.unless));
    return result;
}

bool JoinedBooks::same_splits() const { return splits_of(book_) == splits_of(mutant_); }

bool JoinedBooks::same_measures() const {
    for (FindingId finding = 0; finding < book_.derived.size(); ++finding)
        if (scales(book_, finding) != scales(mutant_, finding)) return false;
    return true;
}

std::set<NodeId> JoinedBooks::split_nodes() const {
    std::set<NodeId> result;
    for (auto const& split : splits_of(book_)) result.insert(split.second.node);
    return result;
}

std::vector<sat::TruthVars> JoinedBooks::vars(sat::Babies const& babies) const {
    std::vector<sat::TruthVars> result(circuit_.size());
    for (auto const& [key, node] : facts_) result[node] = babies.fact(key);
    return result;
}

Lit JoinedBooks::differ(sat::Solver& solver, sat::CircuitCnf& circuit,
                        Difference const& what) const {
    std::vector<Lit> ways;
    for (auto const& [a, b] : what.truths) {
        auto const one = circuit.at(a);
        auto const other = circuit.at(b);
        ways.push_back(unlike(solver, one.yes, other.yes));
        ways.push_back(unlike(solver, one.possible, other.possible));
    }
    for (auto const& [a, b] : what.sums) unlike_sums(solver, circuit, a, b, ways);
    for (auto const& [a, b] : what.reasons) {
        for (auto const part : {&sat::TruthVars::yes, &sat::TruthVars::possible})
            ways.push_back(
                unlike(solver, any(solver, circuit, a, part), any(solver, circuit, b, part)));
    }
    return disjunction(solver, ways);
}

Lit JoinedBooks::differ(sat::Solver& solver, sat::Babies const& babies,
                        Difference const& what) const {
    sat::CircuitCnf circuit(solver, circuit_, vars(babies));
    return differ(solver, circuit, what);
}

/// A cut node keeps what is known of it without the cut, and is free where nothing is.
Lit JoinedBooks::differ_when_cut(sat::Solver& solver, sat::Babies const& babies,
                                 Difference const& what) const {
    sat::CircuitCnf plain(solver, plain_->circuit_, plain_->vars(babies));
    auto all = vars(babies);
    for (auto const& [there, here] : cut_facts_) {
        auto const known = plain.at({there, false});
        all[here] = add_truth(solver);
        solver.add_clause({-known.yes, all[here].yes});
        solver.add_clause({known.possible, -all[here].possible});
    }
    sat::CircuitCnf circuit(solver, circuit_, std::move(all));
    return differ(solver, circuit, what);
}

}  // namespace asterism
