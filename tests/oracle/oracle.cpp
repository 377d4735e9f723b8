// SPDX-License-Identifier: MIT
#include "oracle/oracle.h"

#include <algorithm>

#include "oracle/judge.h"

namespace asterism::oracle {

namespace {

constexpr std::size_t most_questions = 4;

/// The most urgent suggestion among the rules that are true, and among those that are open.
struct Suggested {
    std::optional<Urgency> certain;
    std::optional<Urgency> open;
};

using Services = std::map<std::string, Suggested>;

void raise(std::optional<Urgency>& urgency, Urgency other) {
    if (!urgency || *urgency < other) urgency = other;
}

Services by_rules(Tables const& tables, Judge& judge) {
    Services services;
    for (auto const& rule : tables.book.rules) {
        auto const value = judge.holds(rule.when, {&rule.essential, {}});
        for (auto const& suggestion : rule.suggest) {
            auto& service = services[suggestion.service.text];
            if (value == Truth::yes) raise(service.certain, suggestion.urgency);
            if (value == Truth::unknown) raise(service.open, suggestion.urgency);
        }
    }
    return services;
}

/// One case under one reading of what was not recorded.
class Reading {
public:
    Reading(Tables const& tables, Case const& baby, Numbers const& numbers, States& states,
            Unrecorded unrecorded)
        : tables_(tables),
          baby_(baby),
          numbers_(numbers),
          states_(states),
          unrecorded_(unrecorded),
          judge_(tables, baby, numbers, states, unrecorded) {}

    Services services() {
        auto found = by_rules(tables_, judge_);
        auto const questions = judge_.open_questions();
        if (!questions.empty() && questions.size() <= most_questions) settle(questions, found);
        return found;
    }

    Judge& judge() { return judge_; }

    /// Every tally, with what it comes to if each open question is answered `no`.
    std::map<std::string, Bounds> tallies() {
        Supposed nothing_found;
        for (auto const& question : judge_.open_questions()) nothing_found[question] = Truth::no;
        Judge closed(tables_, baby_, numbers_, states_, unrecorded_, nothing_found);
        std::map<std::string, Bounds> result;
        auto& counting = nothing_found.empty() ? judge_ : closed;
        for (auto const& [id, tally] : tables_.tallies) {
            result[id] = judge_.tally(id);
            result[id].counted = counting.tally(id).low;
        }
        return result;
    }

private:
    /// Tries every combination of answers and keeps what all of them suggest: at the lowest of its
    /// urgencies.
    void settle(std::vector<std::string> const& questions, Services& found) {
        std::optional<Services> common;
        for (auto const& supposed : combinations(questions)) {
            Judge judge(tables_, baby_, numbers_, states_, unrecorded_, supposed);
            auto const branch = by_rules(tables_, judge);
            if (!common) common = branch;
            keep_common(*common, branch);
            if (none_suggested(*common)) return;
        }
        for (auto const& [service, suggested] : *common) {
            if (suggested.certain) raise(found[service].certain, *suggested.certain);
        }
    }

    static std::vector<Supposed> combinations(std::vector<std::string> const& questions) {
        std::vector<Supposed> result{{}};
        for (auto const& question : questions) {
            std::vector<Supposed> longer;
            for (auto const& shorter : result) {
                for (auto const answer : {Truth::no, Truth::yes}) {
                    longer.push_back(shorter);
                    longer.back()[question] = answer;
                }
            }
            result = longer;
        }
        return result;
    }

    static void keep_common(Services& common, Services const& branch) {
        for (auto& [service, suggested] : common) {
            auto const other = branch.find(service);
            if (other == branch.end() || !other->second.certain) suggested.certain.reset();
            if (suggested.certain)
                suggested.certain = std::min(*suggested.certain, *other->second.certain);
        }
    }

    static bool none_suggested(Services const& services) {
        return std::none_of(services.begin(), services.end(),
                            [](auto const& entry) { return entry.second.certain.has_value(); });
    }

    Tables const& tables_;
    Case const& baby_;
    Numbers const& numbers_;
    States& states_;
    Unrecorded unrecorded_;
    Judge judge_;
};

std::string verdict_of(Suggested const& suggested) {
    if (suggested.certain) return "suggested";
    return suggested.open ? "unsettled" : "not-suggested";
}

ServiceAnswer answer_of(Suggested const& now, Suggested const& if_rest_normal) {
    ServiceAnswer answer{verdict_of(now), now.certain, {}, {}};
    if (now.certain && now.open && *now.open > *now.certain) answer.may_rise_to = now.open;
    if (answer.verdict == "unsettled") answer.if_rest_normal = verdict_of(if_rest_normal);
    return answer;
}

}  // namespace

Oracle::Oracle(Rulebook const& book, Ontology const& ontology)
    : tables_(std::make_unique<Tables const>(book, ontology)) {}
Oracle::~Oracle() = default;

Answer Oracle::answer(Case const& baby, Numbers const& numbers) const {
    States states(*tables_, baby);
    Reading now(*tables_, baby, numbers, states, Unrecorded::stays_unknown);
    Reading rest_normal(*tables_, baby, numbers, states, Unrecorded::is_normal);
    auto services = now.services();
    auto normal = rest_normal.services();
    Answer answer;
    for (auto const& service : tables_->book.services) {
        auto const& id = service.id.text;
        answer.services.push_back(answer_of(services[id], normal[id]));
    }
    answer.tallies = now.tallies();
    for (auto const& constellation : tables_->book.constellations)
        answer.constellations.push_back(now.judge().reached(constellation.id.text));
    for (auto const& finding : tables_->ontology.findings)
        answer.present.push_back(now.judge().present(finding.id.text, {}));
    return answer;
}

}  // namespace asterism::oracle
