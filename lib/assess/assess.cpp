// SPDX-License-Identifier: MIT
#include "assess/assess.h"

#include <algorithm>

#include "assess/open_questions.h"
#include "assess/referrals.h"
#include "assess/reports.h"
#include "assess/trial.h"

namespace asterism {

namespace {

bool decided_something(CompiledRulebook const& book, CaseFacts const& facts,
                       CompiledRule const& rule) {
    return value_of(rule.when.literal, facts.values) == Truth::yes &&
           !book.syntax(rule).suggest.empty();
}

/// Most urgent rules first, so that the first step on the list is the first to take.
std::vector<CompiledRule const*> true_rules(CompiledRulebook const& book, CaseFacts const& facts) {
    std::vector<CompiledRule const*> rules;
    for (auto const& rule : book.rules) {
        if (decided_something(book, facts, rule)) rules.push_back(&rule);
    }
    auto const highest = [](CompiledRule const* rule) {
        auto const most =
            std::max_element(rule->suggest.begin(), rule->suggest.end(),
                             [](auto const& a, auto const& b) { return a.urgency < b.urgency; });
        return most->urgency;
    };
    std::stable_sort(rules.begin(), rules.end(),
                     [&](auto const* a, auto const* b) { return highest(a) > highest(b); });
    return rules;
}

void add_actions(CompiledRulebook const& book, Case const& baby, CaseFacts const& facts,
                 Assessment& result) {
    for (auto const* rule : true_rules(book, facts)) {
        for (auto const index : rule->first_steps) {
            auto const& action = book.book->actions[index];
            std::pair<std::string, std::string> step{action.id.text, action.text};
            bool const known = std::find(result.first_steps.begin(), result.first_steps.end(),
                                         step) != result.first_steps.end();
            if (!known) result.first_steps.push_back(std::move(step));
        }
        for (auto const& due : rule->follow_up) {
            auto const& action = book.book->actions[due.action];
            FollowUpResult follow{
                action.id.text, action.text, book.syntax(*rule).id.text, due.from, due.to, {}, {}};
            if (baby.born)
                follow.from_date = add(*baby.born, due.from),
                follow.to_date = add(*baby.born, due.to);
            result.follow_up.push_back(std::move(follow));
        }
        if (auto const& caution = book.syntax(*rule).caution; !caution.empty())
            result.cautions.push_back({caution, {}});
    }
}

void add_provenance(CompiledRulebook const& book, Assessment& result) {
    result.engine = engine_version();
    result.rulebook = {book.book->header.id.text, book.book->header.version, book.book->digest};
    result.ontology = {book.ontology->header.id.text, book.ontology->header.version,
                       book.ontology->digest};
    result.hpo_version = book.ontology->header.hpo_version;
}

}  // namespace

std::string_view engine_version() { return ASTERISM_VERSION; }

Assessment assess(CompiledRulebook const& book, Case const& baby, ChangesTold told) {
    auto const facts = evaluate(book, baby, Rest::unknown);
    auto const rest_normal = verdicts(book, with_rest(book, baby, facts, Rest::normal).values);
    EvidenceReader const reader(book, baby, facts);
    CaseTrial trial(book, facts.values);
    Assessment result;
    result.case_id = baby.id.text;
    add_provenance(book, result);
    result.referrals = referrals(book, baby, facts, rest_normal, reader);
    for (auto const& referral : result.referrals) {
        if (referral.urgency && (!result.urgency || *referral.urgency > *result.urgency))
            result.urgency = referral.urgency;
    }
    result.measures = measure_results(book, facts);
    result.set_aside = set_aside(book, facts, reader);
    result.tallies = tally_results(book, facts, reader);
    result.constellations = constellation_results(book, facts, reader);
    result.findings = finding_results(book, facts, reader);
    result.not_examined = not_examined(book, baby, facts, trial);
    result.cautions = case_cautions(book, baby, facts);
    add_actions(book, baby, facts, result);
    result.nothing_examined = baby.nothing_examined();
    add_what_would_change(book, baby, facts, trial, told, result);
    return result;
}

std::vector<Evidence> recognised_red_flags(CompiledRulebook const& book, Case const& baby) {
    auto const facts = evaluate(book, baby, Rest::unknown);
    EvidenceReader const reader(book, baby, facts);
    std::vector<Evidence> result;
    for (FindingId id = 0; id < book.present.size(); ++id) {
        bool const flagged = book.class_of(id) == FindingClass::red_flag &&
                             reader.value(book.present[id]) == Truth::yes;
        if (flagged) result.push_back(reader.finding(id));
    }
    return result;
}

}  // namespace asterism
