// SPDX-License-Identifier: MIT
#include "review/mutant.h"

#include <algorithm>

#include <fmt/format.h>

namespace asterism {

namespace {

/// Where in the book a condition stands.
using Slot = std::function<yaml::Node&(Rulebook&)>;

class Maker {
public:
    explicit Maker(Rulebook const& book) : book_(without_vignettes(book)) {}

    std::vector<Mutant> run() {
        for (std::size_t i = 0; i < book_.rules.size(); ++i) rule(i);
        for (std::size_t i = 0; i < book_.classes.size(); ++i) classification(i);
        for (std::size_t i = 0; i < book_.derived.size(); ++i) {
            auto const& derived = book_.derived[i];
            condition(derived.finding.text, derived.when,
                      [i](Rulebook& book) -> yaml::Node& { return book.derived[i].when; });
        }
        for (std::size_t i = 0; i < book_.tallies.size(); ++i)
            items(book_.tallies[i].id.text,
                  [i](Rulebook& book) -> std::vector<ScoreItem>& { return book.tallies[i].score; });
        for (std::size_t i = 0; i < book_.constellations.size(); ++i) constellation(i);
        keys();
        return std::move(out_);
    }

private:
    using Items = std::function<std::vector<ScoreItem>&(Rulebook&)>;

    void add(MutantKind kind, Span place, std::string part, std::string what,
             std::vector<std::string> words, std::function<void(Rulebook&)> apply,
             std::optional<RuleId> suggestions_of = {}) {
        words.push_back(part);
        out_.push_back({kind, std::move(place), std::move(part), std::move(what), std::move(words),
                        std::move(apply), suggestions_of});
    }

    void condition(std::string const& part, yaml::Node const& written, Slot const& slot) {
        std::vector<std::string> words;
        collect_words(written, words);
        for (auto& edit : edited(written)) {
            add(edit.kind, edit.place, part, edit.what, words,
                [slot, node = std::move(edit.condition)](Rulebook& book) { slot(book) = node; });
        }
    }

    void rule(std::size_t i) {
        auto const& rule = book_.rules[i];
        condition(rule.id.text, rule.when,
                  [i](Rulebook& book) -> yaml::Node& { return book.rules[i].when; });
        for (std::size_t s = 0; s < rule.suggest.size(); ++s) {
            other_service(i, s);
            other_urgency(i, s, -1);
            other_urgency(i, s, 1);
        }
    }

    /// The next service in the book's order that the rule does not suggest already.
    void other_service(std::size_t i, std::size_t s) {
        auto const& rule = book_.rules[i];
        auto const& suggestion = rule.suggest[s];
        auto const& services = book_.services;
        auto const suggested = [&](Service const& service) {
            return std::any_of(
                rule.suggest.begin(), rule.suggest.end(),
                [&](Suggestion const& known) { return known.service.text == service.id.text; });
        };
        auto const found = std::find_if(services.begin(), services.end(), [&](Service const& one) {
            return one.id.text == suggestion.service.text;
        });
        auto const at = static_cast<std::size_t>(found - services.begin());
        for (std::size_t step = 1; step < services.size(); ++step) {
            auto const& next = services[(at + step) % services.size()];
            if (suggested(next)) continue;
            return add(
                MutantKind::service, suggestion.service.span, rule.id.text,
                fmt::format("{} instead of {}", next.id.text, suggestion.service.text), {},
                [i, s, name = next.id.text](Rulebook& book) {
                    book.rules[i].suggest[s].service.text = name;
                },
                static_cast<RuleId>(i));
        }
    }

    void other_urgency(std::size_t i, std::size_t s, int by) {
        auto const& rule = book_.rules[i];
        auto const& suggestion = rule.suggest[s];
        int const level = static_cast<int>(suggestion.urgency) + by;
        if (level < 0 || level > static_cast<int>(Urgency::emergency)) return;
        auto const other = static_cast<Urgency>(level);
        add(
            MutantKind::urgency, suggestion.service.span, rule.id.text,
            fmt::format("{} {} instead of {}", suggestion.service.text, to_text(other),
                        to_text(suggestion.urgency)),
            {}, [i, s, other](Rulebook& book) { book.rules[i].suggest[s].urgency = other; },
            static_cast<RuleId>(i));
    }

    void classification(std::size_t i) {
        for (int const by : {-1, 1}) {
            auto const& classed = book_.classes[i];
            int const level = static_cast<int>(classed.value) + by;
            if (level < 0 || level > static_cast<int>(FindingClass::red_flag)) continue;
            auto const other = static_cast<FindingClass>(level);
            add(MutantKind::class_moved, classed.finding.span, classed.finding.text,
                fmt::format("{} instead of {}", to_text(other), to_text(classed.value)), {},
                [i, other](Rulebook& book) { reclass(book, i, other); });
        }
    }

    /// A normal variant has no counting key; what becomes countable gets a key of its own.
    static void reclass(Rulebook& book, std::size_t i, FindingClass other) {
        auto& classed = book.classes[i];
        classed.value = other;
        if (other == FindingClass::normal_variant) classed.key = {};
        bool const counts =
            other == FindingClass::minor_variant || other == FindingClass::major_anomaly;
        if (!counts || !classed.key.empty()) return;
        classed.key = {"own-" + classed.finding.text, classed.finding.span};
        book.keys.push_back({classed.key, KeyKind::field, "of its own", {}});
    }

    void items(std::string const& part, Items const& list) {
        auto const& written = list(book_);
        for (std::size_t i = 0; i < written.size(); ++i) {
            auto const& item = written[i];
            condition(part, item.when,
                      [list, i](Rulebook& book) -> yaml::Node& { return list(book)[i].when; });
            std::vector<std::string> words;
            collect_words(item.when, words);
            if (written.size() > 1)
                add(MutantKind::dropped, item.item.span, part, "item left out", words,
                    [list, i](Rulebook& book) {
                        list(book).erase(list(book).begin() + static_cast<std::ptrdiff_t>(i));
                    });
            for (double const by : {-1.0, 1.0}) {
                if (item.points + by <= 0) continue;
                add(MutantKind::threshold, item.item.span, part,
                    fmt::format("{} points instead of {}", item.points + by, item.points), words,
                    [list, i, by](Rulebook& book) { list(book)[i].points += by; });
            }
        }
    }

    void constellation(std::size_t i) {
        auto const& written = book_.constellations[i];
        for (std::size_t g = 0; g < written.groups.size(); ++g)
            items(written.id.text, [i, g](Rulebook& book) -> std::vector<ScoreItem>& {
                return book.constellations[i].groups[g].items;
            });
        condition(written.id.text, written.reached,
                  [i](Rulebook& book) -> yaml::Node& { return book.constellations[i].reached; });
    }

    /// Each key made one with the next of its kind that is used, and each cover taken away.
    void keys() {
        std::vector<std::size_t> used;
        for (std::size_t i = 0; i < book_.keys.size(); ++i)
            if (!members(i).empty()) used.push_back(i);
        for (std::size_t u = 0; u < used.size(); ++u) {
            for (std::size_t step = 1; step < used.size(); ++step) {
                auto const other = used[(u + step) % used.size()];
                if (book_.keys[other].kind != book_.keys[used[u]].kind) continue;
                merge(used[u], other);
                break;
            }
        }
        for (std::size_t i = 0; i < book_.keys.size(); ++i) {
            for (std::size_t c = 0; c < book_.keys[i].covers.size(); ++c) uncover(i, c);
        }
    }

    std::vector<std::string> members(std::size_t key) const {
        std::vector<std::string> result;
        for (auto const& classed : book_.classes) {
            if (classed.key.text == book_.keys[key].id.text) result.push_back(classed.finding.text);
        }
        return result;
    }

    void merge(std::size_t one, std::size_t other) {
        auto const from = book_.keys[one].id.text;
        auto const into = book_.keys[other].id.text;
        add(MutantKind::merged, book_.keys[one].id.span, from, fmt::format("merged with {}", into),
            members(one), [from, into](Rulebook& book) {
                for (auto& classed : book.classes)
                    if (classed.key.text == from) classed.key.text = into;
                for (auto& key : book.keys) {
                    for (auto& covered : key.covers)
                        if (covered.text == from) covered.text = into;
                }
            });
    }

    void uncover(std::size_t i, std::size_t c) {
        auto const& covered = book_.keys[i].covers[c];
        add(MutantKind::dropped, covered.span, book_.keys[i].id.text,
            fmt::format("no longer covers {}", covered.text), members(i), [i, c](Rulebook& book) {
                auto& covers = book.keys[i].covers;
                covers.erase(covers.begin() + static_cast<std::ptrdiff_t>(c));
            });
    }

    Rulebook book_;
    std::vector<Mutant> out_;
};

}  // namespace

std::string_view to_text(MutantKind kind) {
    switch (kind) {
        case MutantKind::threshold: return "threshold";
        case MutantKind::dropped: return "condition dropped";
        case MutantKind::negated: return "condition negated";
        case MutantKind::class_moved: return "class moved";
        case MutantKind::service: return "service swapped";
        case MutantKind::urgency: return "urgency swapped";
        case MutantKind::merged: return "fields merged";
    }
    return "";
}

Rulebook without_vignettes(Rulebook const& book) {
    Rulebook bare{book.header,  book.services,       book.keys,    book.classes, book.derived,
                  book.tallies, book.constellations, book.actions, book.rules,   book.promises,
                  {},           book.digest};
    return bare;
}

std::vector<Mutant> mutants(CompiledRulebook const& book) { return Maker(*book.book).run(); }

}  // namespace asterism
