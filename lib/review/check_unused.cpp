// SPDX-License-Identifier: MIT
#include "review/check_unused.h"

#include <algorithm>
#include <optional>
#include <set>

#include <fmt/format.h>

namespace asterism {

namespace {

/// What the book's conditions and rules name.
class Uses {
public:
    explicit Uses(CompiledRulebook const& book) : book_(book) {
        for (auto const& derived : book.derived) {
            if (derived) add(derived->when);
        }
        for (auto const& tally : book.tallies) {
            for (auto const& item : tally.items) add(item.when);
        }
        for (ConstellationId id = 0; id < book.constellations.size(); ++id) {
            own_ = id;  // that it counts its own items is no use of it
            add(book.constellations[id].reached);
        }
        own_.reset();
        for (auto const& rule : book.rules) add(rule);
        for (auto const& classed : book.classes) {
            if (classed && classed->key) keys.insert(*classed->key);
        }
    }

    std::set<FindingId> findings;
    std::set<TallyId> tallies;
    std::set<ConstellationId> constellations;
    std::set<ServiceId> services;
    std::set<std::uint32_t> actions;
    std::set<KeyId> keys;

private:
    void add(CompiledRule const& rule) {
        add(rule.when);
        for (auto const& suggestion : rule.suggest) services.insert(suggestion.service);
        actions.insert(rule.first_steps.begin(), rule.first_steps.end());
        for (auto const& follow_up : rule.follow_up) actions.insert(follow_up.action);
    }

    void add(CompiledCondition const& condition) {
        if (!condition.condition) return;
        for (auto const& child : condition.children) add(child);
        auto const leaf = condition.condition->leaf();
        if (leaf.kind == Leaf::Kind::finding) add_finding(leaf.index);
        if (leaf.kind == Leaf::Kind::constellation) constellations.insert(leaf.index);
        if (leaf.kind != Leaf::Kind::tally) return;
        tallies.insert(leaf.index);
        auto const of = book_.tallies[leaf.index].constellation;
        if (of && of != own_) constellations.insert(*of);
    }

    /// Asking for a finding asks for those below it too.
    void add_finding(FindingId id) {
        findings.insert(id);
        for (auto const below : book_.ontology->descendants(id)) findings.insert(below);
    }

    CompiledRulebook const& book_;
    std::optional<ConstellationId> own_;
};

class Unused {
public:
    Unused(CompiledRulebook const& book, Diagnostics& diagnostics)
        : book_(book), uses_(book), diagnostics_(diagnostics) {}

    void run() {
        services();
        list(book_.book->keys, uses_.keys, "unused-key", "no class has the counting key `{}`");
        list(book_.book->actions, uses_.actions, "unused-action",
             "no rule has the action `{}` as first step or follow-up");
        for (TallyId id = 0; id < book_.tallies.size(); ++id) tally(id);
        constellations();
        for (FindingId id = 0; id < book_.classes.size(); ++id) finding(id);
    }

private:
    template <class Things>
    void list(Things const& things, std::set<std::uint32_t> const& used, std::string_view code,
              std::string_view message) {
        for (std::uint32_t i = 0; i < things.size(); ++i) {
            auto const& id = things[i].id;
            if (used.contains(i)) continue;
            diagnostics_.add({std::string(code),
                              Severity::note,
                              fmt::format(fmt::runtime(message), id.text),
                              id.span,
                              {},
                              "use it or remove it"});
        }
    }

    void services() {
        auto used = uses_.services;
        for (auto const& constellation : book_.constellations) used.insert(constellation.service);
        list(book_.book->services, used, "unused-service", "no rule suggests the service `{}`");
    }

    void tally(TallyId id) {
        auto const& tally = book_.tallies[id];
        if (tally.constellation || uses_.tallies.contains(id)) return;
        diagnostics_.note("unused-tally", tally.span,
                          fmt::format("no condition asks for the tally `{}`", tally.id));
    }

    void constellations() {
        for (ConstellationId id = 0; id < book_.constellations.size(); ++id) {
            auto const& name = book_.syntax(book_.constellations[id]).id;
            if (uses_.constellations.contains(id)) continue;
            diagnostics_.note("unused-constellation", name.span,
                              fmt::format("no rule asks for the constellation `{}`", name.text));
        }
    }

    bool counted(FindingClass value) const {
        return std::any_of(book_.tallies.begin(), book_.tallies.end(), [&](auto const& tally) {
            return std::find(tally.count.begin(), tally.count.end(), value) != tally.count.end();
        });
    }

    void finding(FindingId id) {
        bool const asked = uses_.findings.contains(id);
        if (book_.derived[id] && !book_.classes[id] && !asked) {
            auto const& name = book_.book->derived[book_.derived[id]->syntax].finding;
            diagnostics_.warning(
                "unused-derivation", name.span,
                fmt::format("`{}` is derived, but no class and no condition uses it", name.text),
                "class it, ask for it in a rule, or remove it");
        }
        auto const value = book_.class_of(id);
        bool const should_matter = value && *value >= FindingClass::minor_variant;
        if (!should_matter || asked || counted(*value)) return;
        auto const& name = book_.book->classes[book_.classes[id]->syntax].finding;
        diagnostics_.note("no-effect", name.span,
                          fmt::format("`{}` is a {}, but no tally counts it and no condition asks "
                                      "for it",
                                      name.text, to_text(*value)));
    }

    CompiledRulebook const& book_;
    Uses uses_;
    Diagnostics& diagnostics_;
};

}  // namespace

void check_unused(CompiledRulebook const& book, Diagnostics& diagnostics) {
    Unused(book, diagnostics).run();
}

}  // namespace asterism
