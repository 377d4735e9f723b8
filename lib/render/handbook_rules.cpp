// SPDX-License-Identifier: MIT
#include <algorithm>

#include <fmt/format.h>

#include "assess/evidence.h"
#include "render/assessment_words.h"
#include "render/handbook_parts.h"
#include "review/promise_words.h"

namespace asterism {

namespace {

/// `same day` and `urgent`; what they mean stands at the head of the chapter.
std::string in_short(Urgency urgency) {
    auto const words = how_soon(urgency);
    return std::string(words.substr(0, words.find(',')));
}

std::string points(LazyList<CompiledItem> const& items, CompiledItem const& item) {
    bool const all_one = std::all_of(items.begin(), items.end(),
                                     [](CompiledItem const& i) { return i.points == 10; });
    if (all_one) return {};
    return fmt::format(" ({} {})", points_text(item.points),
                       item.points == 10 ? "point" : "points");
}

/// The items of a group of a score, each with its condition where that says more than its name, and
/// its points unless each of the score is worth one.
HandbookClause item_clause(HandbookPlan const& plan, CompiledTally const& tally,
                           CompiledTally const& score, std::string opening) {
    HandbookClause list{std::move(opening), {}};
    for (auto const& item : tally.items) {
        auto clause = clause_of(*item.when->condition, plan.vocabulary);
        auto const name = item.item.text + points(score.items, item);
        clause.text = clause.text == item.item.text ? name : name + ": " + clause.text;
        list.parts.push_back(std::move(clause));
    }
    return list;
}

HandbookEntry key_entry(CountingKey const& key) {
    HandbookEntry entry;
    entry.anchor = "key-" + key.id.text;
    entry.title = key.id.text;
    entry.badge_words = to_text(key.kind);
    entry.paragraphs.push_back(key.because);
    if (!key.covers.empty()) {
        std::vector<HandbookLink> covers;
        for (auto const& word : key.covers) covers.push_back({word.text, "key-" + word.text});
        entry.rows.emplace_back("A counted major anomaly covers", std::move(covers));
    }
    return entry;
}

HandbookEntry tally_entry(HandbookPlan const& plan, std::size_t index) {
    auto const& syntax = plan.book.book->tallies[index];
    auto const& compiled = plan.book.tallies[index];
    HandbookEntry entry;
    entry.anchor = "tally-" + syntax.id.text;
    entry.title = capital(syntax.label);
    std::vector<std::string> classes;
    for (auto const value : syntax.count) classes.emplace_back(class_words(value));
    if (!classes.empty()) {
        entry.paragraphs.push_back(
            fmt::format("Counts the keys of each {} found.", list_in_words(classes, "and")));
    }
    if (!compiled.items.empty()) {
        entry.clauses.push_back(item_clause(plan, compiled, compiled, "The sum of these"));
    }
    if (!syntax.sources.empty()) entry.rows.emplace_back("Sources", plan.sources(syntax.sources));
    return entry;
}

HandbookEntry constellation_entry(HandbookPlan const& plan, CompiledConstellation const& compiled) {
    auto const& syntax = plan.book.syntax(compiled);
    HandbookEntry entry;
    entry.anchor = "constellation-" + syntax.id.text;
    entry.title = capital(syntax.label);
    entry.badge_words = "for " + syntax.service.text;
    bool const named = syntax.groups.size() > 1;
    for (std::size_t i = 0; i < compiled.groups.size(); ++i) {
        auto const opening = named ? capital(syntax.groups[i].name.text) : "Items";
        entry.clauses.push_back(item_clause(plan, plan.book.tallies[compiled.groups[i]],
                                            plan.book.tallies[compiled.total], opening));
    }
    entry.clauses.push_back(
        {"Reached with " + clause_of(*compiled.reached->condition, plan.vocabulary).text,
         clause_of(*compiled.reached->condition, plan.vocabulary).parts});
    if (!syntax.note.empty()) entry.paragraphs.push_back(syntax.note);
    entry.rows = {{"Rests on", {{std::string(strength_words(syntax.strength)), ""}}},
                  {"Sources", plan.sources(syntax.sources)}};
    return entry;
}

class RuleEntry {
public:
    RuleEntry(HandbookPlan const& plan, RuleId id)
        : plan_(plan),
          id_(id),
          compiled_(plan.book.rules[id]),
          syntax_(plan.book.syntax(compiled_)) {}

    HandbookEntry write() const {
        HandbookEntry entry;
        entry.anchor = plan_.rule(id_).anchor;
        entry.number = plan_.rule(id_).text;
        entry.title = syntax_.id.text;
        entry.badge = to_text(highest());
        entry.badge_words = in_short(highest());
        auto clause = clause_of(*compiled_.when->condition, plan_.vocabulary);
        clause.text = "If " + clause.text + (clause.parts.empty() ? ": " + referral() : ":");
        bool const in_parts = !clause.parts.empty();
        entry.clauses.push_back(std::move(clause));
        if (in_parts) entry.clauses.push_back({"Then " + referral(), {}});
        entry.paragraphs.push_back(syntax_.because);
        if (!syntax_.caution.empty()) entry.paragraphs.push_back("Caution: " + syntax_.caution);
        add_rows(entry);
        return entry;
    }

private:
    Urgency highest() const {
        auto urgency = Urgency::routine;
        for (auto const& s : compiled_.suggest) urgency = std::max(urgency, s.urgency);
        return urgency;
    }

    std::string referral() const {
        std::vector<std::string> parts;
        for (auto const& s : compiled_.suggest) {
            parts.push_back(fmt::format("{} ({})", plan_.book.book->services[s.service].label,
                                        in_short(s.urgency)));
        }
        return list_in_words(parts, "and") + ".";
    }

    void add_rows(HandbookEntry& entry) const {
        auto const& actions = plan_.book.book->actions;
        std::vector<HandbookLink> steps, later, essential;
        for (auto const action : compiled_.first_steps) steps.push_back({actions[action].text, ""});
        for (std::size_t i = 0; i < compiled_.follow_up.size(); ++i) {
            auto const& written = syntax_.follow_up[i];  // `3m` says more than its hours
            auto const& text = actions[compiled_.follow_up[i].action].text;
            later.push_back({fmt::format("From {} to {} after birth: {}", written.from.text,
                                         written.to.text, text),
                             ""});
        }
        for (auto const& word : syntax_.essential) {
            auto const id = plan_.book.ontology->finding(word.text);
            if (id) essential.push_back(plan_.finding(*id));
        }
        if (!steps.empty()) entry.rows.emplace_back("First steps", std::move(steps));
        if (!later.empty()) entry.rows.emplace_back("Follow-up", std::move(later));
        if (!essential.empty()) entry.rows.emplace_back("Must be known", std::move(essential));
        entry.rows.emplace_back(
            "Rests on",
            std::vector<HandbookLink>{{std::string(strength_words(syntax_.strength)), ""}});
        entry.rows.emplace_back("Sources", plan_.sources(syntax_.sources));
    }

    HandbookPlan const& plan_;
    RuleId id_;
    CompiledRule const& compiled_;
    Rule const& syntax_;
};

}  // namespace

HandbookSection counting_chapter(HandbookPlan const& plan) {
    HandbookSection chapter{"counting", "Counting", {}, {}, {}, false};
    chapter.paragraphs = {
        "Findings that share a counting key count once; both sides of the body count once, and so "
        "do a finding and the kind of it. A key whose findings are all familial is set aside and "
        "named. A normal variant never counts."};
    HandbookSection tallies{"tallies", "Counts and scores", {}, {}, {}, false};
    for (std::size_t i = 0; i < plan.book.book->tallies.size(); ++i) {
        tallies.entries.push_back(tally_entry(plan, i));
    }
    HandbookSection keys{"keys", "Counting keys", {}, {}, {}, true};
    for (auto const& key : plan.book.book->keys) keys.entries.push_back(key_entry(key));
    chapter.sections = {std::move(tallies), std::move(keys)};
    return chapter;
}

HandbookSection constellations_chapter(HandbookPlan const& plan) {
    HandbookSection chapter{"constellations", "Constellations", {}, {}, {}, false};
    chapter.paragraphs = {
        "Published counting rules, for the service named to consider. A count that is reached is "
        "not a diagnosis, and no pattern is more likely than another because it stands first."};
    for (auto const& c : plan.book.constellations) {
        chapter.entries.push_back(constellation_entry(plan, c));
    }
    return chapter;
}

HandbookSection rules_chapter(HandbookPlan const& plan) {
    HandbookSection chapter{"rules", "Rules, by service", {}, {}, {}, false};
    chapter.paragraphs = {
        "Each rule stands once, under the first service that it suggests, the most urgent first.",
        fmt::format("How soon: {}; {}; {}; {}.", how_soon(Urgency::emergency),
                    how_soon(Urgency::same_day), how_soon(Urgency::urgent),
                    how_soon(Urgency::routine))};
    auto const& services = plan.book.book->services;
    for (ServiceId service = 0; service < services.size(); ++service) {
        HandbookSection section{"service-" + services[service].id.text,
                                capital(services[service].label),
                                {},
                                {},
                                {},
                                false};
        for (auto const id : plan.rules) {
            if (plan.book.rules[id].suggest.front().service == service)
                section.entries.push_back(RuleEntry(plan, id).write());
        }
        if (!section.entries.empty()) chapter.sections.push_back(std::move(section));
    }
    return chapter;
}

HandbookSection promises_chapter(HandbookPlan const& plan) {
    HandbookSection chapter{"promises", "What holds for every baby", {}, {}, {}, true};
    for (auto const& promise : plan.book.book->promises) {
        HandbookEntry entry;
        entry.anchor = "promise-" + promise.id.text;
        entry.title = promise.id.text;
        entry.paragraphs.push_back(promise.because);
        entry.paragraphs.push_back(
            fmt::format("For {}: {}.", promised_babies(promise), promised_outcome(promise)));
        entry.rows.emplace_back("Sources", plan.sources(promise.sources));
        chapter.entries.push_back(std::move(entry));
    }
    return chapter;
}

}  // namespace asterism
