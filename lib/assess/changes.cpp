// SPDX-License-Identifier: MIT
#include "assess/changes.h"

#include <algorithm>
#include <optional>

#include "assess/additions.h"
#include "assess/fewest_steps.h"
#include "assess/removals.h"
#include "assess/trial.h"
#include "assess/what_if.h"

namespace asterism {

namespace {

/// What answers for one verdict, made when a service has it: most babies need two of the three.
template <class Search, class... Given>
Search const& made(std::optional<Search>& search, Given const&... given) {
    return search ? *search : search.emplace(given...);
}

bool any_suggested(Assessment const& assessment) {
    return std::ranges::any_of(assessment.referrals, [](Referral const& referral) {
        return referral.verdict == Verdict::suggested;
    });
}

}  // namespace

bool is_told(ChangesTold told, Verdict verdict, bool any_suggested) {
    switch (told) {
        case ChangesTold::none: return false;
        case ChangesTold::in_brief: return !any_suggested || verdict != Verdict::not_suggested;
        case ChangesTold::all: return true;
    }
    return true;
}

void add_what_would_change(CompiledRulebook const& book, Case const& baby, CaseFacts const& facts,
                           CaseTrial& trial, ChangesTold told, Assessment& assessment) {
    if (told == ChangesTold::none) return;
    WhatIf const what_if(book, baby, facts, trial);
    std::optional<Removals> removals;
    std::optional<Additions> additions;
    std::optional<FewestSteps> steps;
    bool const any = any_suggested(assessment);
    for (ServiceId service = 0; service < assessment.referrals.size(); ++service) {
        auto& referral = assessment.referrals[service];
        auto& change = referral.what_would_change;
        if (!is_told(told, referral.verdict, any)) continue;
        switch (referral.verdict) {
            case Verdict::suggested:
                made(removals, book, facts, what_if).find(service, change);
                break;
            case Verdict::not_suggested:
                made(additions, book, baby, facts, what_if).find(service, change);
                break;
            case Verdict::unsettled: made(steps, book, baby, what_if).find(service, change); break;
        }
    }
}

void add_what_would_change(CompiledRulebook const& book, Case const& baby, Assessment& assessment) {
    auto const facts = evaluate(book, baby, Rest::unknown);
    CaseTrial trial(book, facts.values);
    add_what_would_change(book, baby, facts, trial, ChangesTold::all, assessment);
}

}  // namespace asterism
