// SPDX-License-Identifier: MIT
#include "review/difference_items.h"

#include <fmt/format.h>

#include "assess/evidence.h"
#include "review/promise_words.h"

namespace asterism {

namespace {

std::string words(std::vector<Word> const& list) {
    std::string result;
    for (auto const& word : list) result += (result.empty() ? "" : ", ") + word.text;
    return result;
}

template <class T>
std::string texts(std::vector<T> const& list) {
    std::string result;
    for (auto const value : list)
        result += (result.empty() ? "" : ", ") + std::string(to_text(value));
    return result;
}

class Parts {
public:
    explicit Parts(CompiledRulebook const& book)
        : book_(book), syntax_(*book.book), vocabulary_(book.vocabulary()) {}

    std::vector<BookPart> all() const {
        return {{"service", services()}, {"counting key", keys()},
                {"class", classes()},    {"derived finding", derived()},
                {"tally", tallies()},    {"constellation", constellations()},
                {"action", actions()},   {"rule", rules()},
                {"promise", promises()}};
    }

private:
    std::vector<BookItem> services() const {
        std::vector<BookItem> items;
        for (auto const& s : syntax_.services) {
            items.push_back({s.id.text, "", s.id.span, s.label, {{"name", s.label}}, {}});
        }
        return items;
    }

    std::vector<BookItem> keys() const {
        std::vector<BookItem> items;
        for (auto const& key : syntax_.keys) {
            auto const kind = std::string(to_text(key.kind));
            items.push_back(
                {key.id.text,
                 "",
                 key.id.span,
                 kind,
                 {{"kind", kind}, {"covers", words(key.covers)}, {"because", key.because}},
                 {}});
        }
        return items;
    }

    std::string label(Word const& finding) const {
        auto const id = book_.ontology->finding(finding.text);
        return id ? book_.ontology->at(*id).label : std::string();
    }

    std::vector<BookItem> classes() const {
        std::vector<BookItem> items;
        for (auto const& c : syntax_.classes) {
            auto const value = std::string(to_text(c.value));
            auto const whole = c.key.empty() ? value : value + ", counts as " + c.key.text;
            items.push_back({c.finding.text,
                             label(c.finding),
                             c.finding.span,
                             whole,
                             {{"class", value},
                              {"counting key", c.key.text},
                              {"because", c.because},
                              {"sources", words(c.sources)}},
                             {}});
        }
        return items;
    }

    std::vector<BookItem> derived() const {
        std::vector<BookItem> items;
        for (auto const& compiled : book_.derived) {
            if (!compiled) continue;
            auto const& d = syntax_.derived[compiled->syntax];
            items.push_back({d.finding.text,
                             label(d.finding),
                             d.finding.span,
                             compiled->when->condition->describe(vocabulary_),
                             {{"because", d.because}, {"sources", words(d.sources)}},
                             {{"condition", compiled->when->condition}}});
        }
        return items;
    }

    void add_items(CompiledTally const& tally, BookItem& item) const {
        for (auto const& line : tally.items) {
            item.aspects.emplace_back("points of " + line.item.text, points_text(line.points));
            item.conditions.emplace_back("item " + line.item.text, line.when->condition);
        }
    }

    std::vector<BookItem> tallies() const {
        std::vector<BookItem> items;
        for (std::size_t i = 0; i < syntax_.tallies.size(); ++i) {
            auto const& t = syntax_.tallies[i];
            auto const whole = t.count.empty() ? "a score" : "a count of " + texts(t.count);
            items.push_back(
                {t.id.text,
                 t.label,
                 t.id.span,
                 whole,
                 {{"name", t.label}, {"counts", texts(t.count)}, {"sources", words(t.sources)}},
                 {}});
            add_items(book_.tallies[i], items.back());
        }
        return items;
    }

    std::vector<BookItem> constellations() const {
        std::vector<BookItem> items;
        for (auto const& compiled : book_.constellations) {
            auto const& c = book_.syntax(compiled);
            items.push_back({c.id.text,
                             c.label,
                             c.id.span,
                             compiled.reached->condition->describe(vocabulary_),
                             {{"name", c.label},
                              {"service", c.service.text},
                              {"strength", std::string(to_text(c.strength))},
                              {"note", c.note},
                              {"sources", words(c.sources)}},
                             {{"reached", compiled.reached->condition}}});
            add_items(book_.tallies[compiled.total], items.back());
        }
        return items;
    }

    std::vector<BookItem> actions() const {
        std::vector<BookItem> items;
        for (auto const& a : syntax_.actions) {
            items.push_back({a.id.text, "", a.id.span, a.text, {{"text", a.text}}, {}});
        }
        return items;
    }

    std::vector<BookItem> rules() const {
        std::vector<BookItem> items;
        for (auto const& compiled : book_.rules) {
            auto const& r = book_.syntax(compiled);
            BookItem item{
                r.id.text,
                "",
                r.id.span,
                suggestions(r) + " when " + compiled.when->condition->describe(vocabulary_),
                {},
                {}};
            for (auto const& s : r.suggest) {
                item.aspects.emplace_back("urgency for " + s.service.text, to_text(s.urgency));
            }
            item.aspects.insert(item.aspects.end(), {{"first steps", words(r.first_steps)},
                                                     {"follow-up", follow_up(r)},
                                                     {"essential history", words(r.essential)},
                                                     {"because", r.because},
                                                     {"caution", r.caution},
                                                     {"strength", std::string(to_text(r.strength))},
                                                     {"sources", words(r.sources)}});
            item.conditions.emplace_back("condition", compiled.when->condition);
            items.push_back(std::move(item));
        }
        return items;
    }

    static std::string suggestions(Rule const& rule) {
        std::string result;
        for (auto const& s : rule.suggest) {
            result += fmt::format("{}{}, {}", result.empty() ? "" : "; ", s.service.text,
                                  to_text(s.urgency));
        }
        return result;
    }

    static std::string follow_up(Rule const& rule) {
        std::string result;
        for (auto const& f : rule.follow_up) {
            result += fmt::format("{}{} {} to {}", result.empty() ? "" : "; ", f.action.text,
                                  f.from.text, f.to.text);
        }
        return result;
    }

    std::vector<BookItem> promises() const {
        std::vector<BookItem> items;
        for (auto const& p : syntax_.promises) {
            items.push_back({p.id.text,
                             "",
                             p.id.span,
                             p.because,
                             {{"for", promised_babies(p)},
                              {"then", promised_outcome(p)},
                              {"because", p.because},
                              {"sources", words(p.sources)}},
                             {}});
        }
        return items;
    }

    CompiledRulebook const& book_;
    Rulebook const& syntax_;
    Vocabulary vocabulary_;
};

}  // namespace

std::vector<BookPart> parts_of(CompiledRulebook const& book) { return Parts(book).all(); }

}  // namespace asterism
