// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <vector>

#include "rulebook/rulebook.h"
#include "yaml/table.h"

namespace asterism {

/// What one rulebook file may hold: any of the sections.
struct RulebookSections {
    std::optional<RulebookHeader> header;
    std::vector<Service> services;
    std::vector<CountingKey> keys;
    std::vector<Classification> classes;
    std::vector<Derivation> derived;
    std::vector<TallySyntax> tallies;
    std::vector<ConstellationSyntax> constellations;
    std::vector<Action> actions;
    std::vector<Rule> rules;
    std::vector<PromiseSyntax> promises;
    std::vector<VignetteSyntax> vignettes;
};

/// The field table of a rulebook file: reads it and describes it for schemas.
yaml::Table<RulebookSections> const& rulebook_file_table();

}  // namespace asterism
