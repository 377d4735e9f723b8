// SPDX-License-Identifier: MIT
#include "oracle/oracle.h"

#include <algorithm>
#include <iterator>

#include "oracle/judge.h"

namespace asterism::oracle {

namespace {

constexpr std::size_t most_questions = 4;

/// The most urgent suggestion among the rules that are true, and among those that are open.
struct Suggested {
    std::optional<Urgency> certain;
    std::optional<Urgency> open;
};

using Services = std::vector<Suggested>;  ///< in the order of the book
using Rules = std::vector<RuleText const*>;

void raise(std::optional<Urgency>& urgency, Urgency other) {
    if (!urgency || *urgency < other) urgency = other;
}

/// The rules that were unknown are added to `open`.
Services by_rules(Tables const& tables, Rules const& rules, Judge& judge, Rules& open) {
    Services services(tables.book.services.size());
    for (auto const* rule : rules) {
        auto const value = judge.holds(rule->when, {&rule->essential, nullptr});
        if (value == Truth::unknown) open.push_back(rule);
        for (auto const& [service, urgency] : rule->suggest) {
            if (value == Truth::yes) raise(services[service].certain, urgency);
            if (value == Truth::unknown) raise(services[service].open, urgency);
        }
    }
    return services;
}

/// Those of the rules that speak of a service of this kind.
template <class Kind>
Rules that_matter(Rules const& rules, Services const& services, Kind kind) {
    Rules result;
    std::copy_if(rules.begin(), rules.end(), std::back_inserter(result), [&](auto const* rule) {
        return std::any_of(
            rule->suggest.begin(), rule->suggest.end(),
            [&](SuggestionText const& text) { return kind(services[text.service], text.urgency); });
    });
    return result;
}

/// One case under one reading of what was not recorded.
class Reading {
public:
    Reading(Tables const& tables, Case const& baby, Numbers const& numbers, States& states,
            Unrecorded unrecorded, Asking asking)
        : tables_(tables),
          baby_(baby),
          numbers_(numbers),
          states_(states),
          unrecorded_(unrecorded),
          asking_(asking),
          judge_(tables, baby, numbers, states, unrecorded) {}

    Services services(Rules const& rules) {
        auto found = by_rules(tables_, rules, judge_, open_);
        auto const questions = judge_.open_questions();
        if (!questions.empty() && questions.size() <= most_questions)
            settle(questions, rules, found);
        return found;
    }

    Judge& judge() { return judge_; }

    /// The rules that were neither true nor false.
    Rules const& open() const { return open_; }

    /// Every tally, with what it comes to if each open question is answered `no`.
    std::vector<Bounds> tallies() {
        auto const questions = judge_.open_questions();
        auto closed = questions.empty() ? std::nullopt : std::optional(supposing(questions, 0));
        auto& counting = closed ? *closed : judge_;
        std::vector<Bounds> result;
        for (std::size_t i = 0; i < tables_.tallies.size(); ++i) {
            auto bounds = judge_.tally(i);
            bool const settled = bounds.low == bounds.high && asking_ == Asking::open_rules;
            bounds.counted = settled ? bounds.low : counting.tally(i).low;
            result.push_back(bounds);
        }
        return result;
    }

private:
    /// Tries every combination of answers and keeps what all of them suggest: at the lowest of its
    /// urgencies. What holds without an answer holds with every one.
    void settle(std::vector<std::size_t> const& questions, Rules const& all, Services& found) {
        auto const rules = asking_ == Asking::all_rules ? all : that_could_raise(found);
        if (rules.empty()) return;
        Services common;
        for (unsigned yes = 0; yes < (1u << questions.size()); ++yes) {
            auto judge = supposing(questions, yes);
            Rules open;
            auto branch = by_rules(tables_, rules, judge, open);
            if (asking_ == Asking::open_rules) keep_what_held(branch, found);
            if (yes == 0) common = branch;
            keep_common(common, branch);
            if (none_raised(common, found)) return;
        }
        for (std::size_t i = 0; i < found.size(); ++i) {
            if (common[i].certain) raise(found[i].certain, *common[i].certain);
        }
    }

    Rules that_could_raise(Services const& found) const {
        return that_matter(open_, found, [](Suggested const& service, Urgency urgency) {
            return !service.certain || *service.certain < urgency;
        });
    }

    /// The case with each question answered: the bits of `yes` say which with yes.
    Judge supposing(std::vector<std::size_t> const& questions, unsigned yes) const {
        Supposed supposed(tables_.questions);
        for (std::size_t i = 0; i < questions.size(); ++i)
            supposed[questions[i]] = i < most_questions && (yes >> i & 1u) ? Truth::yes : Truth::no;
        return {tables_, baby_, numbers_, states_, unrecorded_, std::move(supposed)};
    }

    static void keep_what_held(Services& branch, Services const& found) {
        for (std::size_t i = 0; i < branch.size(); ++i) {
            if (found[i].certain) raise(branch[i].certain, *found[i].certain);
        }
    }

    static void keep_common(Services& common, Services const& branch) {
        for (std::size_t i = 0; i < common.size(); ++i) {
            auto& certain = common[i].certain;
            if (!branch[i].certain) certain.reset();
            if (certain) certain = std::min(*certain, *branch[i].certain);
        }
    }

    static bool none_raised(Services const& common, Services const& found) {
        return std::equal(common.begin(), common.end(), found.begin(),
                          [](Suggested const& all, Suggested const& now) {
                              return !all.certain || (now.certain && *all.certain <= *now.certain);
                          });
    }

    Tables const& tables_;
    Case const& baby_;
    Numbers const& numbers_;
    States& states_;
    Unrecorded unrecorded_;
    Asking asking_;
    Judge judge_;
    Rules open_;
};

std::string verdict_of(Suggested const& suggested) {
    if (suggested.certain) return "suggested";
    return suggested.open ? "unsettled" : "not-suggested";
}

bool is_unsettled(Suggested const& suggested) { return !suggested.certain && suggested.open; }

ServiceAnswer answer_of(Suggested const& now, Suggested const& if_rest_normal) {
    ServiceAnswer answer{verdict_of(now), now.certain, {}, {}};
    if (now.certain && now.open && *now.open > *now.certain) answer.may_rise_to = now.open;
    if (is_unsettled(now)) answer.if_rest_normal = verdict_of(if_rest_normal);
    return answer;
}

Rules every_rule(Tables const& tables) {
    Rules rules;
    for (auto const& rule : tables.rules) rules.push_back(&rule);
    return rules;
}

}  // namespace

Oracle::Oracle(Rulebook const& book, Ontology const& ontology)
    : tables_(std::make_unique<Tables const>(book, ontology)) {}
Oracle::~Oracle() = default;

Answer Oracle::answer(Case const& baby, Numbers const& numbers, Asking asking) const {
    States states(*tables_, baby);
    Reading now(*tables_, baby, numbers, states, Unrecorded::stays_unknown, asking);
    Reading rest_normal(*tables_, baby, numbers, states, Unrecorded::is_normal, asking);
    auto const rules = every_rule(*tables_);
    auto const services = now.services(rules);
    // More is known when the rest is normal, so that only what is open now can differ.
    auto const open = that_matter(now.open(), services, [](Suggested const& service, Urgency) {
        return is_unsettled(service);
    });
    auto const normal = rest_normal.services(asking == Asking::all_rules ? rules : open);
    Answer answer;
    for (std::size_t i = 0; i < services.size(); ++i)
        answer.services.push_back(answer_of(services[i], normal[i]));
    answer.tallies = now.tallies();
    for (std::size_t i = 0; i < tables_->constellations.size(); ++i)
        answer.constellations.push_back(now.judge().reached(i));
    for (auto const& finding : tables_->findings)
        answer.present.push_back(now.judge().present(finding, {}));
    return answer;
}

}  // namespace asterism::oracle
