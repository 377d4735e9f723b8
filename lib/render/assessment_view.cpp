// SPDX-License-Identifier: MIT
#include "render/assessment_view.h"

#include <algorithm>
#include <map>
#include <set>

#include <fmt/format.h>

#include "conditions/condition.h"
#include "render/assessment_words.h"

namespace asterism {

namespace {

std::set<std::string> rules_of(Referral const& referral) {
    std::set<std::string> rules;
    for (auto const& reason : referral.reasons) rules.insert(reason.rule);
    return rules;
}

std::vector<std::string> labels_of(std::vector<Referral const*> const& referrals) {
    std::vector<std::string> labels;
    for (auto const* referral : referrals) labels.push_back(referral->label);
    return labels;
}

void tell_reasons(SuggestionGroup& group, std::set<std::string>& told) {
    for (auto const& reason : group.referrals.front()->reasons) {
        (told.insert(reason.rule).second ? group.reasons : group.repeated).push_back(&reason);
    }
}

/// How many open rules of unsettled services hang on each step.
std::map<std::string, int> rules_by_step(Assessment const& a) {
    std::map<std::string, int> rules;
    for (auto const& referral : a.referrals) {
        if (referral.verdict != Verdict::unsettled) continue;
        for (auto const& step : referral.settled_by) rules[step.step] += std::max(1, step.rules);
    }
    return rules;
}

std::vector<std::string> lacking_facts(Assessment const& a) {
    std::vector<std::string> facts;
    for (auto const* r : with_verdict(a, Verdict::unsettled)) {
        if (r->if_rest_normal != Verdict::unsettled) continue;
        for (auto const& fact : r->open_facts) {
            if (std::find(facts.begin(), facts.end(), fact) == facts.end()) facts.push_back(fact);
        }
    }
    return facts;
}

}  // namespace

std::vector<Referral const*> with_verdict(Assessment const& a, Verdict verdict) {
    std::vector<Referral const*> result;
    for (auto const& referral : a.referrals) {
        if (referral.verdict == verdict) result.push_back(&referral);
    }
    std::stable_sort(result.begin(), result.end(),
                     [](auto const* x, auto const* y) { return x->urgency > y->urgency; });
    return result;
}

std::vector<SuggestionGroup> suggestion_groups(Assessment const& a) {
    std::vector<SuggestionGroup> groups;
    for (auto const* referral : with_verdict(a, Verdict::suggested)) {
        auto const same = std::find_if(groups.begin(), groups.end(), [&](auto const& group) {
            return rules_of(*group.referrals.front()) == rules_of(*referral);
        });
        if (same == groups.end())
            groups.push_back({{referral}, {}, {}});
        else
            same->referrals.push_back(referral);
    }
    std::set<std::string> told;
    for (auto& group : groups) tell_reasons(group, told);
    return groups;
}

std::string services_with_urgency(std::vector<Referral const*> const& referrals) {
    std::string text;
    std::vector<std::string> labels;
    for (std::size_t i = 0; i < referrals.size(); ++i) {
        labels.push_back(referrals[i]->label);
        auto const urgency = *referrals[i]->urgency;
        if (i + 1 < referrals.size() && referrals[i + 1]->urgency == urgency) continue;
        text += fmt::format("{}{} ({})", text.empty() ? "" : "; ", list_in_words(labels, "and"),
                            how_soon(urgency));
        labels.clear();
    }
    return text;
}

std::string heading_of(SuggestionGroup const& group) {
    return services_with_urgency(group.referrals);
}

std::vector<StepToDo const*> open_essentials(Assessment const& a) {
    std::vector<StepToDo const*> steps;
    for (auto const& step : a.not_examined.steps) {
        if (step.essential) steps.push_back(&step);
    }
    auto const rules = rules_by_step(a);
    auto const weight = [&](StepToDo const* step) {
        auto const found = rules.find(step->step);
        return found == rules.end() ? 0 : found->second;
    };
    std::stable_sort(steps.begin(), steps.end(),
                     [&](auto const* x, auto const* y) { return weight(x) > weight(y); });
    return steps;
}

std::string if_normal_sentence(Assessment const& a) {
    auto const unsettled = with_verdict(a, Verdict::unsettled);
    if (unsettled.empty()) return {};
    std::vector<Referral const*> yes, wait;
    for (auto const* r : unsettled) {
        if (r->if_rest_normal == Verdict::suggested) yes.push_back(r);
        if (r->if_rest_normal == Verdict::unsettled) wait.push_back(r);
    }
    bool const further = !with_verdict(a, Verdict::suggested).empty() || !yes.empty();
    std::string text = "If everything not examined were normal: ";
    if (!yes.empty()) text += list_in_words(labels_of(yes), "and") + " would be suggested; ";
    if (unsettled.size() > yes.size() + wait.size()) {
        text += further ? "no further referral; " : "no referral; ";
    }
    if (!wait.empty()) {
        auto const facts = lacking_facts(a);
        text += list_in_words(labels_of(wait), "and") + " would still wait for " +
                (facts.empty() ? "more" : list_in_words(facts, "and")) + "; ";
    }
    text.resize(text.size() - 2);
    return text + ".";
}

std::vector<std::string> rise_sentences(Assessment const& a) {
    std::map<Urgency, std::vector<Referral const*>, std::greater<>> rising;
    for (auto const* r : with_verdict(a, Verdict::suggested)) {
        if (r->may_rise_to) rising[*r->may_rise_to].push_back(r);
    }
    std::vector<std::string> sentences;
    for (auto const& [urgency, referrals] : rising) {
        sentences.push_back(fmt::format("What is not examined could raise {} to: {}.",
                                        list_in_words(labels_of(referrals), "and"),
                                        how_soon(urgency)));
    }
    return sentences;
}

std::vector<std::string> nearest_sentences(Assessment const& a) {
    std::vector<std::string> sentences;
    std::map<std::string, std::size_t> by_reason;  // one sentence for services that share a rule
    for (auto const& r : a.referrals) {
        if (r.verdict == Verdict::suggested || r.reasons.empty()) continue;
        auto const& reason = r.reasons.front();
        auto const [known, fresh] = by_reason.emplace(reason.rule, sentences.size());
        if (!fresh) {
            sentences[known->second].insert(0, r.label + ", ");
            continue;
        }
        auto const seen = evidence_list(reason.evidence, 4);
        auto const with = seen.empty() ? "" : fmt::format("beside {}, ", seen);
        sentences.push_back(fmt::format("{}: {}rule {} still lacks {}.", r.label, with, reason.rule,
                                        first_of(reason.lacks, 4)));
    }
    return sentences;
}

}  // namespace asterism
