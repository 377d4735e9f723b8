// SPDX-License-Identifier: MIT
#include "review/check_unreachable.h"

#include <algorithm>

#include <fmt/format.h>

#include "assess/verdicts.h"
#include "review/sat/babies.h"

namespace asterism {

namespace {

class Unreachable {
public:
    Unreachable(CompiledRulebook const& book, Diagnostics& diagnostics, sat::Limits const& limits)
        : book_(book),
          diagnostics_(diagnostics),
          limits_(limits),
          babies_(solver_, {&book}),
          circuit_(babies_.circuit(book)) {
        // Everything is written before the first question: a clause added later would drop the
        // model.
        for (auto const& rule : book.rules) {
            if (rule.when->condition) met(rule.when);
        }
    }

    void run() {
        for (auto const& constellation : book_.constellations) check(constellation);
        for (auto const& rule : book_.rules) check(rule);
    }

private:
    sat::Lit met(CompiledCondition const& when) { return circuit_.at(when.literal).yes; }

    void check(CompiledConstellation const& constellation) {
        if (!constellation.reached->condition) return;
        auto const answer = solver_.solve({met(constellation.reached)}, limits_);
        if (answer != sat::Answer::unsatisfiable) return;
        auto const& id = book_.syntax(constellation).id;
        diagnostics_.warning("never-reached", id.span,
                             fmt::format("no baby can reach the constellation `{}`", id.text));
    }

    void check(CompiledRule const& rule) {
        if (!rule.when->condition) return;
        auto const answer = solver_.solve({met(rule.when)}, limits_);
        auto const& id = book_.syntax(rule).id;
        if (answer == sat::Answer::unsatisfiable) {
            diagnostics_.warning("never-fires", id.span,
                                 fmt::format("no baby can meet the rule `{}`", id.text),
                                 "its conditions exclude each other");
        }
        bool const only_services = rule.first_steps.empty() && rule.follow_up.empty() &&
                                   book_.syntax(rule).caution.empty();
        if (answer != sat::Answer::satisfiable) return;
        if (only_services && check_implied(rule)) return;
        check_overlap(rule);
    }

    /// Whether another rule gives each service that this one gives, as soon or sooner.
    static bool says_as_much(CompiledRule const& other, CompiledRule const& rule) {
        return std::all_of(rule.suggest.begin(), rule.suggest.end(),
                           [&](CompiledSuggestion const& s) {
                               auto const given = urgency_for(other, s.service);
                               return given && *given >= s.urgency;
                           });
    }

    /// The model at hand meets the rule and little else: only rules that it meets too can be met
    /// always.
    bool check_implied(CompiledRule const& rule) {
        std::vector<CompiledRule const*> candidates;
        for (auto const& other : book_.rules) {
            bool const may = &other != &rule && other.when->condition && says_as_much(other, rule);
            if (may) candidates.push_back(&other);
        }
        auto const by = always_met_with(rule, std::move(candidates), 1);
        if (!by.empty()) report(rule, *by.front());
        return !by.empty();
    }

    /// Which of the candidates are met whenever the rule is, at most so many. Each model found
    /// strikes off all the candidates that it does not meet.
    std::vector<CompiledRule const*> always_met_with(CompiledRule const& rule,
                                                     std::vector<CompiledRule const*> candidates,
                                                     std::size_t most) {
        std::vector<CompiledRule const*> found;
        while (!candidates.empty() && found.size() < most) {
            auto const* other = candidates.back();
            candidates.pop_back();
            auto const answer = solver_.solve({met(rule.when), -met(other->when)}, limits_);
            if (answer == sat::Answer::unsatisfiable) found.push_back(other);
            if (answer != sat::Answer::satisfiable) continue;
            std::erase_if(candidates, [&](auto const* c) { return !solver_.value(met(c->when)); });
        }
        return found;
    }

    /// Whether another rule gives one of the services later than this one.
    static bool says_it_later(CompiledRule const& other, CompiledRule const& rule) {
        return std::any_of(rule.suggest.begin(), rule.suggest.end(),
                           [&](CompiledSuggestion const& s) {
                               auto const given = urgency_for(other, s.service);
                               return given && *given < s.urgency;
                           });
    }

    void check_overlap(CompiledRule const& rule) {
        std::vector<CompiledRule const*> candidates;
        for (auto const& other : book_.rules) {
            bool const may = &other != &rule && other.when->condition && says_it_later(other, rule);
            if (may) candidates.push_back(&other);
        }
        auto const found = always_met_with(rule, candidates, candidates.size());
        if (found.empty()) return;
        auto const& id = book_.syntax(rule).id;
        Diagnostic note{
            "overlap",
            Severity::note,
            fmt::format("whenever `{}` is met, a milder rule for the same service is too", id.text),
            id.span,
            {},
            {}};
        for (auto other = found.rbegin(); other != found.rend(); ++other)
            note.related.push_back({book_.syntax(**other).id.span, "the milder rule"});
        diagnostics_.add(std::move(note));
    }

    void report(CompiledRule const& rule, CompiledRule const& other) {
        bool const same = rule.when.literal == other.when.literal && says_as_much(rule, other);
        if (same && &rule < &other) return;  // of two equal rules the later one is named
        auto const& id = book_.syntax(rule).id;
        auto const& by = book_.syntax(other).id;
        diagnostics_.add(
            {"implied",
             Severity::note,
             fmt::format("whenever `{}` is met, `{}` suggests the same services as soon", id.text,
                         by.text),
             id.span,
             {{by.span, "the rule that says it already"}},
             {}});
    }

    CompiledRulebook const& book_;
    Diagnostics& diagnostics_;
    sat::Limits limits_;
    sat::Solver solver_;
    sat::Babies babies_;
    sat::CircuitCnf circuit_;
};

}  // namespace

void check_unreachable(CompiledRulebook const& book, Diagnostics& diagnostics,
                       sat::Limits const& limits) {
    Unreachable(book, diagnostics, limits).run();
}

}  // namespace asterism
