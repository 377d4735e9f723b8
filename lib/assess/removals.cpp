// SPDX-License-Identifier: MIT
#include "assess/removals.h"

#include <algorithm>
#include <numeric>

namespace asterism {

namespace {

/// With so few things recorded every set is tried; with more, sets up to the second number.
constexpr std::size_t few_enough_for_all = 10;
constexpr std::size_t largest_set_of_many = 4;
constexpr std::size_t most_trials = 20000;
constexpr std::size_t most_sets = 12;

bool contains(std::vector<std::size_t> const& set, std::vector<std::size_t> const& part) {
    return std::includes(set.begin(), set.end(), part.begin(), part.end());
}

}  // namespace

Removals::Removals(CompiledRulebook const& book, CaseFacts const& facts, WhatIf const& what_if)
    : book_(book), facts_(facts), what_if_(what_if) {
    for (FindingId id = 0; id < facts.states.size(); ++id) {
        if (facts.states[id].origin != Origin::stated_present) continue;
        candidates_.push_back({book.ontology->at(id).id.text, book.ontology->at(id).label});
        changes_.push_back(what_if.finding(id, Truth::no));
    }
    for (auto const& reading : facts.readings) {
        auto const& measure = book.ontology->measures[reading.measured.measure];
        candidates_.push_back({measure.id.text, measure.label + " past its cut-off"});
        changes_.push_back(what_if.measure_normal(reading.measured.measure));
    }
    find_turned();
}

/// Which nodes a removal can turn, and which way: a major anomaly that is taken away gives back the
/// minor variants of its field, so that a rule which was not true takes over.
void Removals::find_turned() {
    falls_with_.assign(book_.circuit.size(), false);
    rises_with_.assign(book_.circuit.size(), false);
    for (auto const& change : changes_) {
        for (auto const& [node, value] : change) falls_with_[node] = true;
    }
    for (NodeId node = 0; node < book_.circuit.size(); ++node) {
        if (book_.circuit.is_fact(node)) continue;
        for (auto const& input : book_.circuit.inputs(node)) {
            auto const [below, negated] = input.literal;
            if (falls_with_[below]) (negated ? rises_with_ : falls_with_)[node] = true;
            if (rises_with_[below]) (negated ? falls_with_ : rises_with_)[node] = true;
        }
    }
}

bool Removals::may_rise(CompiledRule const& rule) const {
    auto const literal = rule.when.literal;
    return literal.negated ? falls_with_[literal.node] : rises_with_[literal.node];
}

/// A rule that carries the suggestion now, alone or with others however an open question of the
/// counting falls (then it is unknown), or that may once something is taken away.
bool Removals::matters(CompiledRule const& rule) const {
    return value_of(rule.when.literal, facts_.values) != Truth::no || may_rise(rule);
}

/// Where taking more away can only take rules away, a suggestion that stands without everything
/// (but the things that undo it alone) needs no larger set to be tried.
bool Removals::all_found(ServiceId service, Set const& useful,
                         std::vector<Set> const& found) const {
    for (auto const& rule : book_.rules) {
        if (urgency_for(rule, service) && may_rise(rule)) return false;
    }
    Set rest;
    for (auto const index : useful) {
        bool const alone =
            std::any_of(found.begin(), found.end(), [&](Set const& f) { return f == Set{index}; });
        if (!alone) rest.push_back(index);
    }
    return !falls(service, rest);
}

bool Removals::falls(ServiceId service, Set const& set) const {
    std::vector<WhatIf::Change const*> changes;
    for (auto const index : set) changes.push_back(&changes_[index]);
    return what_if_.verdict(changes, service) != Verdict::suggested;
}

/// Candidates that no set can need are left out: those on which none of the service's rules that
/// matter depends. What remains is found by the circuit itself: a candidate is useful when its
/// facts are below such a rule.
std::vector<std::size_t> Removals::useful_for(ServiceId service) const {
    std::vector<bool> below(book_.circuit.size(), false);
    for (auto const& rule : book_.rules) {
        if (urgency_for(rule, service) && matters(rule)) below[rule.when.literal.node] = true;
    }
    // What opens a question of the counting carries what holds however the question falls.
    for (auto const& split : book_.splits) {
        if (value_of(split.counted, facts_.values) == Truth::no) continue;
        below[split.counted.node] = below[split.unless.node] = true;
    }
    for (std::size_t node = book_.circuit.size(); node-- > 0;) {
        if (!below[node] || book_.circuit.is_fact(static_cast<NodeId>(node))) continue;
        for (auto const& input : book_.circuit.inputs(static_cast<NodeId>(node)))
            below[input.literal.node] = true;
    }
    std::vector<std::size_t> useful;
    for (std::size_t i = 0; i < changes_.size(); ++i) {
        auto const& change = changes_[i];
        if (std::any_of(change.begin(), change.end(),
                        [&](auto const& c) { return below[c.first]; }))
            useful.push_back(i);
    }
    return useful;
}

std::vector<Removals::Set> Removals::next_size(std::vector<Set> const& smaller,
                                               std::vector<std::size_t> const& useful,
                                               std::vector<Set> const& found) const {
    std::vector<Set> larger;
    for (auto const& set : smaller) {
        for (auto const index : useful) {
            if (!set.empty() && index <= set.back()) continue;
            auto next = set;
            next.push_back(index);
            bool const minimal = std::none_of(found.begin(), found.end(),
                                              [&](Set const& f) { return contains(next, f); });
            if (minimal && larger.size() < most_trials) larger.push_back(std::move(next));
        }
    }
    return larger;
}

void Removals::find(ServiceId service, WhatWouldChange& result) const {
    auto const useful = useful_for(service);
    auto const largest = useful.size() <= few_enough_for_all ? useful.size() : largest_set_of_many;
    std::vector<Set> found;
    std::vector<Set> sets{{}};
    for (std::size_t size = 1; size <= largest; ++size) {
        sets = next_size(sets, useful, found);
        std::vector<Set> standing;
        for (auto const& set : sets) (falls(service, set) ? found : standing).push_back(set);
        sets = std::move(standing);
    }
    // Sets that still stand could be completed only by more than the largest size tried.
    result.more_without = found.size() > most_sets || (useful.size() > largest && !sets.empty() &&
                                                       !all_found(service, useful, found));
    if (found.size() > most_sets) found.resize(most_sets);
    for (auto const& set : found) {
        std::vector<Change> named;
        for (auto const index : set) named.push_back(candidates_[index]);
        result.without.push_back(std::move(named));
    }
}

}  // namespace asterism
