// SPDX-License-Identifier: MIT
#include "assess/additions.h"

#include <algorithm>

namespace asterism {

namespace {

constexpr std::size_t most_listed = 12;
constexpr std::size_t most_for_pairs = 60;

std::vector<bool> suggested(std::vector<ServiceVerdict> const& verdicts) {
    std::vector<bool> result;
    for (auto const& verdict : verdicts) result.push_back(verdict.verdict == Verdict::suggested);
    return result;
}

}  // namespace

Additions::Additions(CompiledRulebook const& book, Case const& baby, CaseFacts const& facts, WhatIf const& what_if)
    : book_(book), what_if_(what_if) {
    for (FindingId id = 0; id < book.present.size(); ++id) {
        if (!can_be_added(baby, facts, id)) continue;
        Candidate candidate{id, what_if.finding(id, Truth::yes), {}, {}};
        candidate.suggests = suggested(what_if.verdicts({&candidate.change}));
        candidate.alone = suggested(what_if.alone(id));
        candidates_.push_back(std::move(candidate));
    }
}

/// Not present, possible in this sex, and not stated absent: what was looked for and is not there is not proposed.
bool Additions::can_be_added(Case const& baby, CaseFacts const& facts, FindingId id) const {
    auto const& state = facts.states[id];
    bool const settled = state.origin == Origin::stated_absent || state.origin == Origin::ancestor_absent || state.origin == Origin::other_sex;
    bool const known_sex = baby.sex == Sex::female || baby.sex == Sex::male;
    auto const& finding = book_.ontology->at(id);
    bool const fits = !known_sex || finding.sex == Sex::not_given || finding.sex == baby.sex;
    return !settled && fits && value_of(book_.present[id], facts.values) != Truth::yes;
}

Change Additions::named(Candidate const& candidate) const {
    auto const& finding = book_.ontology->at(candidate.finding);
    return {finding.id.text, finding.label};
}

void Additions::find(ServiceId service, WhatWouldChange& result) const {
    for (auto const& candidate : candidates_) {
        if (!candidate.suggests[service]) continue;
        if (candidate.alone[service]) ++result.alone;
        else if (result.with.size() < most_listed) result.with.push_back({named(candidate)});
        else result.more_with = true;
    }
    if (result.with.empty()) find_pairs(service, result);
}

void Additions::find_pairs(ServiceId service, WhatWouldChange& result) const {
    std::vector<Candidate const*> rest;
    for (auto const& candidate : candidates_) {
        if (!candidate.suggests[service]) rest.push_back(&candidate);
    }
    if (rest.size() > most_for_pairs) {
        result.more_with = true;
        return;
    }
    for (std::size_t i = 0; i < rest.size(); ++i) {
        for (std::size_t k = i + 1; k < rest.size(); ++k) {
            auto const verdicts = what_if_.verdicts({&rest[i]->change, &rest[k]->change});
            if (verdicts[service].verdict != Verdict::suggested) continue;
            if (result.with.size() < most_listed) result.with.push_back({named(*rest[i]), named(*rest[k])});
            else result.more_with = true;
        }
    }
}

}  // namespace asterism
