// SPDX-License-Identifier: MIT
#include "review/check_rules.h"

#include <algorithm>

#include <fmt/format.h>

#include "assess/verdicts.h"

namespace asterism {

namespace {

class Rules {
public:
    Rules(CompiledRulebook const& book, Diagnostics& diagnostics)
        : book_(book), diagnostics_(diagnostics) {}

    void run() {
        all_sources();
        for (auto const& rule : book_.book->rules) {
            strength(rule.id, rule.strength, rule.sources);
            suggestions(rule);
        }
        for (auto const& c : book_.book->constellations) strength(c.id, c.strength, c.sources);
        for (auto const* condition : all_conditions(book_)) repeated(*condition);
        for (auto const& tally : book_.tallies) repeated(tally);
        for (auto const& rule : book_.rules) same_condition(rule);
    }

private:
    void all_sources() {
        for (auto const& x : book_.book->classes) sources(x.finding, x.sources);
        for (auto const& x : book_.book->derived) sources(x.finding, x.sources);
        for (auto const& x : book_.book->constellations) sources(x.id, x.sources);
        for (auto const& x : book_.book->rules) sources(x.id, x.sources);
        for (auto const& x : book_.book->promises) sources(x.id, x.sources);
        for (auto const& x : book_.book->vignettes) {
            if (!x.generated) sources(x.id, x.sources);
        }
    }

    void sources(Word const& id, std::vector<Word> const& cited) {
        if (!cited.empty()) return;
        diagnostics_.error("no-source", id.span, fmt::format("`{}` cites no source", id.text),
                           "name one of the bibliography, or `common-practice`");
    }

    void strength(Word const& id, Strength strength, std::vector<Word> const& cited) {
        bool const claims = strength == Strength::guideline || strength == Strength::study;
        bool const bears = std::any_of(cited.begin(), cited.end(), [](Word const& source) {
            return source.text != "common-practice";
        });
        if (!claims || bears || cited.empty()) return;
        diagnostics_.warning("weak-source", id.span,
                             fmt::format("`{}` claims to rest on a {}, but cites only "
                                         "`common-practice`",
                                         id.text, to_text(strength)),
                             fmt::format("cite the {}, or lower the strength", to_text(strength)));
    }

    void suggestions(Rule const& rule) {
        for (std::size_t i = 0; i < rule.suggest.size(); ++i) {
            auto const& service = rule.suggest[i].service;
            auto const first =
                std::find_if(rule.suggest.begin(), rule.suggest.end(),
                             [&](Suggestion const& s) { return s.service.text == service.text; });
            if (first->service.span.begin == service.span.begin) continue;
            diagnostics_.add({"suggested-twice",
                              Severity::warning,
                              fmt::format("`{}` suggests {} twice", rule.id.text, service.text),
                              service.span,
                              {{first->service.span, "suggested here already"}},
                              "only the sooner urgency counts: keep one"});
        }
    }

    void report_repeated(Span const& span, Span const& first) {
        diagnostics_.add({"repeated-condition",
                          Severity::warning,
                          "the same condition stands twice in this list",
                          span,
                          {{first, "it stands here already"}},
                          "remove one, or correct a slip of the pen"});
    }

    void repeated(CompiledCondition const& parent) {
        auto const& children = parent.children;
        for (std::size_t i = 0; i < children.size(); ++i) {
            for (std::size_t j = 0; j < i; ++j) {
                if (children[i].literal != children[j].literal) continue;
                report_repeated(children[i].condition->span(), children[j].condition->span());
                break;
            }
            repeated(children[i]);
        }
    }

    void repeated(CompiledTally const& tally) {
        for (std::size_t i = 0; i < tally.items.size(); ++i) {
            for (std::size_t j = 0; j < i; ++j) {
                auto const &one = tally.items[i].when, &other = tally.items[j].when;
                bool const same =
                    one->condition && other->condition && one.literal == other.literal;
                if (same) report_repeated(one->condition->span(), other->condition->span());
            }
        }
    }

    static bool says_as_much(CompiledRule const& other, CompiledRule const& rule) {
        return std::all_of(rule.suggest.begin(), rule.suggest.end(),
                           [&](CompiledSuggestion const& s) {
                               auto const given = urgency_for(other, s.service);
                               return given && *given >= s.urgency;
                           });
    }

    void same_condition(CompiledRule const& rule) {
        for (auto const& other : book_.rules) {
            if (&other == &rule) return;  // only earlier rules
            if (!rule.when->condition || rule.when.literal != other.when.literal) continue;
            if (says_as_much(other, rule) || says_as_much(rule, other)) continue;  // `implied`
            auto const& by = book_.syntax(other).id;
            auto const& id = book_.syntax(rule).id;
            return diagnostics_.add(
                {"same-condition",
                 Severity::note,
                 fmt::format("`{}` has the condition of `{}`", id.text, by.text),
                 id.span,
                 {{by.span, "the other rule"}},
                 "one rule can suggest several services"});
        }
    }

    CompiledRulebook const& book_;
    Diagnostics& diagnostics_;
};

}  // namespace

std::vector<CompiledCondition const*> all_conditions(CompiledRulebook const& book) {
    std::vector<CompiledCondition const*> all;
    auto const add = [&](CompiledCondition const& c) {
        if (c.condition) all.push_back(&c);
    };
    for (auto const& derived : book.derived) {
        if (derived) add(derived->when);
    }
    for (auto const& tally : book.tallies) {
        for (auto const& item : tally.items) add(item.when);
    }
    for (auto const& constellation : book.constellations) add(constellation.reached);
    for (auto const& rule : book.rules) add(rule.when);
    return all;
}

bool has_twin(CompiledCondition const& parent, std::size_t child) {
    auto const& children = parent.children;
    return std::count_if(children.begin(), children.end(), [&](CompiledCondition const& c) {
               return c.literal == children[child].literal;
           }) > 1;
}

void check_rules(CompiledRulebook const& book, Diagnostics& diagnostics) {
    Rules(book, diagnostics).run();
}

}  // namespace asterism
