// SPDX-License-Identifier: MIT
#include "compile/read_conditions.h"

namespace asterism {

namespace {

std::vector<ConditionPtr> read_items(std::vector<ScoreItem> const& items,
                                     ReadContext const& context) {
    std::vector<ConditionPtr> result;
    for (auto const& item : items) result.push_back(read_condition(item.when, context));
    return result;
}

/// The items of a constellation: once for the total, once more for each named group. Read once,
/// then shared.
void read_constellation_items(ConstellationSyntax const& constellation, ReadContext const& context,
                              std::vector<std::vector<ConditionPtr>>& tallies) {
    std::vector<ConditionPtr> all;
    std::vector<std::vector<ConditionPtr>> named;
    for (auto const& group : constellation.groups) {
        auto const items = read_items(group.items, context);
        all.insert(all.end(), items.begin(), items.end());
        if (!group.name.empty()) named.push_back(items);
    }
    tallies.push_back(std::move(all));
    tallies.insert(tallies.end(), named.begin(), named.end());
}

}  // namespace

BookConditions read_conditions(Rulebook const& book, Ontology const& ontology,
                               BookNames const& names, Diagnostics& diagnostics) {
    ReadContext const context{ontology, names.tallies, names.constellations, diagnostics};
    BookConditions result;
    for (auto const& derivation : book.derived)
        result.derived.push_back(read_condition(derivation.when, context));
    for (auto const& tally : book.tallies)
        result.tally_items.push_back(read_items(tally.score, context));
    for (auto const& constellation : book.constellations)
        read_constellation_items(constellation, context, result.tally_items);
    for (auto const& constellation : book.constellations)
        result.reached.push_back(read_condition(constellation.reached, context));
    for (auto const& rule : book.rules) result.rules.push_back(read_condition(rule.when, context));
    return result;
}

}  // namespace asterism
