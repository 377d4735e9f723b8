// SPDX-License-Identifier: MIT
#include "assess/changes.h"

#include <algorithm>
#include <set>

#include "assess/additions.h"
#include "assess/fewest_steps.h"
#include "assess/removals.h"
#include "assess/what_if.h"

namespace asterism {

void add_what_would_change(CompiledRulebook const& book, Case const& baby, Assessment& assessment) {
    auto const facts = evaluate(book, baby, Rest::unknown);
    WhatIf const what_if(book, baby, facts);
    Removals const removals(book, facts, what_if);
    Additions const additions(book, baby, facts, what_if);
    FewestSteps const steps(book, baby, what_if);
    for (ServiceId service = 0; service < assessment.referrals.size(); ++service) {
        auto& referral = assessment.referrals[service];
        auto& change = referral.what_would_change;
        switch (referral.verdict) {
            case Verdict::suggested: removals.find(service, change); break;
            case Verdict::not_suggested: additions.find(service, change); break;
            case Verdict::unsettled: steps.find(service, change); break;
        }
    }
}

}  // namespace asterism
