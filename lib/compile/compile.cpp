// SPDX-License-Identifier: MIT
#include <cmath>

#include <fmt/format.h>

#include "compile/book_builder.h"
#include "compile/checks.h"
#include "compile/compiled.h"
#include "compile/norm_descriptions.h"
#include "compile/recompile.h"
#include "compile/signs.h"

namespace asterism {

namespace {

/// Turns the book's own lists into compiled ones, one list a method; conditions are joined on
/// afterwards.
class Compiler {
public:
    Compiler(CompiledRulebook& result, Diagnostics& diagnostics)
        : result_(result),
          book_(*result.book),
          ontology_(*result.ontology),
          diagnostics_(diagnostics),
          names_(index_names(book_, diagnostics)),
          conditions_(read_conditions(book_, ontology_, names_, diagnostics)) {}

    void run() {
        header();
        classes();
        derivations();
        tallies();
        constellations();
        rules();
        check_references(book_, ontology_, diagnostics_);
        check_classes(result_, diagnostics_);
        if (!diagnostics_.has_errors()) build();
    }

private:
    void header() {
        auto const date = parse_date(book_.header.effective.text);
        if (date)
            result_.effective = *date;
        else
            diagnostics_.error("bad-date", book_.header.effective.span, date.error());
        if (book_.header.ontology.text != ontology_.header.id.text) {
            diagnostics_.error("other-ontology", book_.header.ontology.span,
                               fmt::format("the book speaks of the ontology `{}`, this one is `{}`",
                                           book_.header.ontology.text, ontology_.header.id.text));
        }
    }

    std::optional<FindingId> finding(Word const& word) {
        ReadContext const context{ontology_, names_.tallies, names_.constellations, diagnostics_};
        FindingId id = 0;
        return !word.empty() && read_finding(word, context, id) ? std::optional(id) : std::nullopt;
    }

    void classes() {
        result_.classes.resize(ontology_.findings.size());
        for (std::uint32_t i = 0; i < book_.classes.size(); ++i) {
            auto const& syntax = book_.classes[i];
            auto const id = finding(syntax.finding);
            if (!id || stands_twice(result_.classes[*id], syntax.finding, "class")) continue;
            CompiledClass classed{syntax.value, std::nullopt, i};
            KeyId key = 0;
            if (look_up(names_.keys, syntax.key, "key", key, diagnostics_)) classed.key = key;
            result_.classes[*id] = classed;
        }
    }

    void derivations() {
        result_.derived.resize(ontology_.findings.size());
        for (std::uint32_t i = 0; i < book_.derived.size(); ++i) {
            auto const id = finding(book_.derived[i].finding);
            if (!id || stands_twice(result_.derived[*id], book_.derived[i].finding, "derivation"))
                continue;
            result_.derived[*id] = CompiledDerivation{i, {}, {}};
        }
    }

    template <class T>
    bool stands_twice(std::optional<T> const& known, Word const& word, std::string_view what) {
        if (known)
            diagnostics_.error("duplicate-id", word.span,
                               fmt::format("a second {} of `{}`", what, word.text));
        return known.has_value();
    }

    void tallies() {
        for (auto const& syntax : book_.tallies) {
            if (syntax.count.empty() == syntax.score.empty()) {
                diagnostics_.error("one-of", syntax.id.span,
                                   "a tally needs either `count` or `score`");
            }
            CompiledTally tally{
                syntax.id.text, syntax.label, syntax.id.span, syntax.count, {}, {}, {}, {}};
            for (auto const& item : syntax.score) tally.items.push_back(compiled(item));
            result_.tallies.push_back(std::move(tally));
        }
    }

    CompiledItem compiled(ScoreItem const& item) {
        double const tenths = item.points * 10;
        if (!(item.points > 0) || std::abs(tenths - std::round(tenths)) > 1e-9) {
            diagnostics_.error("bad-points", item.item.span, "points are above 0, in tenths");
        }
        return {item.item, static_cast<Tenths>(std::llround(tenths)), {}};
    }

    void constellations() {
        for (std::uint32_t i = 0; i < book_.constellations.size(); ++i) {
            auto const& syntax = book_.constellations[i];
            CompiledConstellation constellation;
            constellation.syntax = i;
            look_up(names_.services, syntax.service, "service", constellation.service,
                    diagnostics_);
            constellation.total = constellation_tallies(syntax, i, constellation.groups);
            result_.constellations.push_back(std::move(constellation));
        }
    }

    TallyId constellation_tallies(ConstellationSyntax const& syntax, ConstellationId id,
                                  std::vector<TallyId>& groups) {
        auto const total = static_cast<TallyId>(result_.tallies.size());
        result_.tallies.push_back(
            {syntax.id.text, "items of " + syntax.label, syntax.id.span, {}, {}, {}, {}, id});
        for (auto const& group : syntax.groups) {
            if (!group.name.empty()) {
                groups.push_back(static_cast<TallyId>(result_.tallies.size()));
                result_.tallies.push_back(
                    {syntax.id.text + "/" + group.name.text,
                     fmt::format("{} items of {}", group.name.text, syntax.label),
                     group.name.span,
                     {},
                     {},
                     {},
                     {},
                     id});
            }
            for (auto const& item : group.items) {
                result_.tallies[total].items.push_back(compiled(item));
                if (!group.name.empty()) result_.tallies.back().items.push_back(compiled(item));
            }
        }
        if (groups.empty()) groups.push_back(total);
        return total;
    }

    void rules() {
        for (std::uint32_t i = 0; i < book_.rules.size(); ++i) {
            auto const& syntax = book_.rules[i];
            CompiledRule rule;
            rule.syntax = i;
            for (auto const& suggestion : syntax.suggest) {
                ServiceId service = 0;
                if (look_up(names_.services, suggestion.service, "service", service, diagnostics_))
                    rule.suggest.push_back({service, suggestion.urgency});
            }
            for (auto const& step : syntax.first_steps) {
                std::uint32_t action = 0;
                if (look_up(names_.actions, step, "action", action, diagnostics_))
                    rule.first_steps.push_back(action);
            }
            for (auto const& follow_up : syntax.follow_up)
                rule.follow_up.push_back(compiled(follow_up));
            result_.rules.push_back(std::move(rule));
        }
    }

    CompiledFollowUp compiled(FollowUp const& syntax) {
        CompiledFollowUp result;
        look_up(names_.actions, syntax.action, "action", result.action, diagnostics_);
        result.from = duration(syntax.from);
        result.to = duration(syntax.to);
        if (result.to < result.from)
            diagnostics_.error("empty-range", syntax.to.span, "the window ends before it starts");
        return result;
    }

    Duration duration(Word const& word) {
        auto const value = parse_duration(word.text);
        if (!value)
            diagnostics_.error("bad-duration", word.span,
                               fmt::format("`{}` is not understood: {}", word.text, value.error()));
        return value.value_or(Duration{});
    }

    std::set<FindingId> essential(Rule const& rule) {
        std::set<FindingId> result;
        for (auto const& word : rule.essential) {
            auto const id = finding(word);
            if (!id) continue;
            if (!ontology_.at(*id).history)
                diagnostics_.error("not-history", word.span,
                                   fmt::format("`{}` is not a history item", word.text));
            result.insert(*id);
        }
        return result;
    }

    void build() {
        BookBuilder builder(result_, conditions_, diagnostics_);
        builder.build_derived();
        for (FindingId id = 0; id < ontology_.findings.size(); ++id)
            result_.present.push_back(builder.present(id));
        for (TallyId id = 0; id < result_.tallies.size(); ++id) builder.build_tally(id);
        for (ConstellationId id = 0; id < result_.constellations.size(); ++id)
            builder.build_constellation(id);
        for (auto& rule : result_.rules) {
            rule.when = builder.build_rule(conditions_.rules[rule.syntax],
                                           essential(book_.rules[rule.syntax]));
        }
        if (diagnostics_.has_errors()) return;  // what asks for itself would be followed for ever
        for (auto& rule : result_.rules) rule.signs = signs_of(result_, rule.when);
    }

    CompiledRulebook& result_;
    Rulebook const& book_;
    Ontology const& ontology_;
    Diagnostics& diagnostics_;
    BookNames names_;
    BookConditions conditions_;
};

}  // namespace

namespace {

/// The labels of a list's items, which are few of the many that are ever asked for.
template <class List>
class Labels final : public LazyList<std::string>::Maker {
public:
    explicit Labels(List const& list) : Maker(list.size()), list_(list) {}

private:
    std::string make(std::size_t index) const override { return list_[index].label; }

    List const& list_;
};

template <class List>
LazyList<std::string> labels(List const& list) {
    return LazyList<std::string>::deferred(std::make_shared<Labels<List> const>(list));
}

}  // namespace

Vocabulary CompiledRulebook::vocabulary() const {
    return {*ontology, labels(tallies), labels(book->constellations)};
}

std::optional<FindingClass> CompiledRulebook::class_of(FindingId finding) const {
    return classes[finding] ? std::optional(classes[finding]->value) : std::nullopt;
}

std::optional<CompiledRulebook> compile(std::shared_ptr<Rulebook const> book,
                                        std::shared_ptr<Ontology const> ontology,
                                        Diagnostics& diagnostics) {
    Diagnostics problems;
    auto standards = read_standards(*ontology, problems);
    auto result = recompile(std::move(book), std::move(ontology), std::move(standards), problems);
    diagnostics.append(problems);
    return problems.has_errors() ? std::nullopt : std::move(result);
}

std::optional<CompiledRulebook> recompile(std::shared_ptr<Rulebook const> book,
                                          std::shared_ptr<Ontology const> ontology,
                                          std::shared_ptr<norms::Standards const> standards,
                                          Diagnostics& diagnostics) {
    Diagnostics problems;
    CompiledRulebook result;
    result.book = std::move(book);
    result.ontology = std::move(ontology);
    result.standards = std::move(standards);
    Compiler(result, problems).run();
    diagnostics.append(problems);
    if (problems.has_errors()) return std::nullopt;
    return result;
}

}  // namespace asterism
