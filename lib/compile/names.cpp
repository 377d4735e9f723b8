// SPDX-License-Identifier: MIT
#include "compile/names.h"

#include <fmt/format.h>

namespace asterism {

namespace {

template <class List>
NameIndex index_of(List const& things, std::string_view what, Diagnostics& diagnostics) {
    NameIndex names;
    for (std::uint32_t i = 0; i < things.size(); ++i) {
        auto const& id = things[i].id;
        if (id.empty()) continue;
        if (auto const first = names.exact(id.text); !first.empty()) {
            diagnostics.add({"duplicate-id",
                             Severity::error,
                             fmt::format("the {} `{}` is defined twice", what, id.text),
                             id.span,
                             {{things[first.front()].id.span, "first defined here"}},
                             {}});
            continue;
        }
        names.add(id.text, i);
    }
    return names;
}

void add_constellation_tallies(Rulebook const& book, NameIndex& tallies, Diagnostics& diagnostics) {
    auto next = static_cast<std::uint32_t>(book.tallies.size());
    for (auto const& constellation : book.constellations) {
        for (auto const& name : tally_names(constellation)) {
            if (!tallies.exact(name).empty()) {
                diagnostics.error("duplicate-id", constellation.id.span,
                                  fmt::format("a tally called `{}` exists already", name));
            }
            tallies.add(name, next++);
        }
    }
}

}  // namespace

std::vector<std::string> tally_names(ConstellationSyntax const& constellation) {
    std::vector<std::string> names{constellation.id.text};
    for (auto const& group : constellation.groups) {
        if (!group.name.empty())
            names.push_back(fmt::format("{}/{}", constellation.id.text, group.name.text));
    }
    return names;
}

BookNames index_names(Rulebook const& book, Diagnostics& diagnostics) {
    BookNames names;
    names.services = index_of(book.services, "service", diagnostics);
    names.keys = index_of(book.keys, "counting key", diagnostics);
    names.actions = index_of(book.actions, "action", diagnostics);
    names.tallies = index_of(book.tallies, "tally", diagnostics);
    names.constellations = index_of(book.constellations, "constellation", diagnostics);
    names.rules = index_of(book.rules, "rule", diagnostics);
    index_of(book.vignettes, "vignette", diagnostics);
    index_of(book.promises, "promise", diagnostics);
    add_constellation_tallies(book, names.tallies, diagnostics);
    return names;
}

bool look_up(NameIndex const& names, Word const& word, std::string_view what, std::uint32_t& target,
             Diagnostics& diagnostics) {
    if (word.empty()) return false;
    auto const resolution = names.resolve(word.text);
    if (resolution.unique()) {
        target = resolution.target();
        return true;
    }
    report_unresolved(word, what, resolution, {}, diagnostics);
    return false;
}

}  // namespace asterism
