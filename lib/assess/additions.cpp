// SPDX-License-Identifier: MIT
#include "assess/additions.h"

#include <algorithm>

namespace asterism {

namespace {

constexpr std::size_t most_listed = 12;
constexpr std::size_t most_for_pairs = 60;
constexpr int most_trials = 2000;  ///< pairs tried for one service

bool contains(std::vector<ServiceId> const& services, ServiceId service) {
    return std::ranges::find(services, service) != services.end();
}

/// Every node on which something bears; gates stand after their inputs.
std::vector<bool> nodes_above(Circuit const& circuit, std::vector<WhatIf::Change> const& things) {
    std::vector<bool> above(circuit.size(), false);
    for (auto const& change : things) {
        for (auto const& [node, value] : change) above[node] = true;
    }
    for (NodeId node = 0; node < circuit.size(); ++node) {
        if (circuit.is_fact(node)) continue;
        for (auto const& input : circuit.inputs(node))
            if (above[input.literal.node]) above[node] = true;
    }
    return above;
}

/// Every node that can bear on one node; inputs stand before their gate.
std::vector<bool> nodes_below(Circuit const& circuit, NodeId top) {
    std::vector<bool> below(circuit.size(), false);
    below[top] = true;
    for (NodeId node = top + 1; node-- > 0;) {
        if (!below[node] || circuit.is_fact(node)) continue;
        for (auto const& input : circuit.inputs(node)) below[input.literal.node] = true;
    }
    return below;
}

}  // namespace

Additions::Additions(CompiledRulebook const& book, Case const& baby, CaseFacts const& facts,
                     WhatIf const& what_if)
    : book_(book), what_if_(what_if) {
    for (auto const& statement : baby.present)
        recorded_.push_back(what_if.finding(statement.finding, Truth::yes));
    candidates_.reserve(book.present.size());
    for (FindingId id = 0; id < book.present.size(); ++id) {
        if (!can_be_added(baby, facts, id)) continue;
        Candidate candidate{id, what_if.finding(id, Truth::yes), {}, {}};
        candidate.suggests = what_if.newly_suggested(candidate.change);
        candidates_.push_back(std::move(candidate));
    }
}

/// Not present, possible in this sex, and not stated absent: what was looked for and is not there
/// is not proposed.
bool Additions::can_be_added(Case const& baby, CaseFacts const& facts, FindingId id) const {
    auto const& state = facts.states[id];
    bool const settled = state.origin == Origin::stated_absent ||
                         state.origin == Origin::ancestor_absent ||
                         state.origin == Origin::other_sex;
    bool const known_sex = baby.sex == Sex::female || baby.sex == Sex::male;
    auto const& finding = book_.ontology->frame(id);
    bool const fits = !known_sex || finding.sex == Sex::not_given || finding.sex == baby.sex;
    return !settled && fits && value_of(book_.present[id], facts.values) != Truth::yes;
}

Change Additions::named(Candidate const& candidate) const {
    auto const& finding = book_.ontology->at(candidate.finding);
    return {finding.id.text, finding.label};
}

bool Additions::suggests_alone(Candidate const& candidate, ServiceId service) const {
    if (!candidate.alone) candidate.alone = what_if_.suggested_alone(candidate.finding);
    return contains(*candidate.alone, service);
}

void Additions::find(ServiceId service, WhatWouldChange& result) const {
    for (auto const& candidate : candidates_) {
        if (!contains(candidate.suggests, service)) continue;
        if (suggests_alone(candidate, service))
            ++result.alone;
        else if (result.with.size() < most_listed)
            result.with.push_back({named(candidate)});
        else
            result.more_with = true;
    }
    if (result.with.empty()) find_pairs(service, result);
}

void Additions::find_pairs(ServiceId service, WhatWouldChange& result) const {
    Pool rest;
    for (std::size_t i = 0; i < candidates_.size(); ++i) {
        if (!contains(candidates_[i].suggests, service)) rest.push_back(i);
    }
    Search search{service, most_trials, {}};
    if (rest.size() <= most_for_pairs) {
        search_pairs(rest, search, result);
        return;
    }
    // Too many to try every pair: those that a partly met rule asks for, the most specific rule
    // first.
    for (auto const& pool : pools(service, rest)) search_pairs(pool, search, result);
    result.more_with = true;
}

/// For each rule of the service below which something recorded stands: the candidates below it.
std::vector<Additions::Pool> Additions::pools(ServiceId service, Pool const& rest) const {
    std::vector<Pool> pools;
    auto const above = nodes_above(book_.circuit, recorded_);
    for (auto const& rule : book_.rules) {
        if (!above[rule.when.literal.node] || !urgency_for(rule, service)) continue;
        auto const below = nodes_below(book_.circuit, rule.when.literal.node);
        auto const touches = [&](WhatIf::Change const& change) {
            return std::any_of(change.begin(), change.end(),
                               [&](auto const& c) { return below[c.first]; });
        };
        Pool pool;
        for (auto const i : rest) {
            if (touches(candidates_[i].change)) pool.push_back(i);
        }
        pools.push_back(std::move(pool));
    }
    std::stable_sort(pools.begin(), pools.end(),
                     [](Pool const& a, Pool const& b) { return a.size() < b.size(); });
    return pools;
}

void Additions::search_pairs(Pool const& pool, Search& search, WhatWouldChange& result) const {
    for (std::size_t i = 0; i < pool.size(); ++i) {
        for (std::size_t k = i + 1; k < pool.size(); ++k) {
            if (!search.seen.emplace(pool[i], pool[k]).second) continue;
            if (search.trials-- <= 0) return;
            auto const& one = candidates_[pool[i]];
            auto const& other = candidates_[pool[k]];
            auto const verdict = what_if_.verdict({&one.change, &other.change}, search.service);
            if (verdict != Verdict::suggested) continue;
            if (result.with.size() < most_listed)
                result.with.push_back({named(one), named(other)});
            else
                result.more_with = true;
        }
    }
}

}  // namespace asterism
