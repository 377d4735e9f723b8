// SPDX-License-Identifier: MIT
#pragma once

#include "base/diagnostic.h"
#include "ontology/names.h"
#include "ontology/ontology.h"
#include "rulebook/rulebook.h"

namespace asterism {

/// Every name that a rulebook defines, for the rooms that refer to them.
struct BookNames {
    NameIndex services;
    NameIndex keys;
    NameIndex actions;
    NameIndex
        tallies;  ///< ids of `CompiledRulebook::tallies`: the book's own, then the constellations'
    NameIndex constellations;
    NameIndex rules;
};

/// Indexes the book's names; an id that stands twice is reported at both places.
BookNames index_names(Rulebook const& book, Diagnostics& diagnostics);

/// Looks a word up by id; false after a report with the nearest name. An empty word was reported
/// before.
bool look_up(NameIndex const& names, Word const& word, std::string_view what, std::uint32_t& target,
             Diagnostics& diagnostics);

/// The tallies of a constellation in order: one for all items, then one a named group.
std::vector<std::string> tally_names(ConstellationSyntax const& constellation);

}  // namespace asterism
