// SPDX-License-Identifier: MIT
#include "review/coverage.h"

#include <algorithm>

namespace asterism {

Coverage::Coverage(CompiledRulebook const& book) {
    for (auto const& derived : book.derived) {
        if (derived) add(book.book->derived[derived->syntax].finding.text, derived->when);
    }
    // A constellation's items stand in its total; the tallies of its groups repeat them.
    for (TallyId id = 0; id < book.book->tallies.size(); ++id) {
        for (auto const& item : book.tallies[id].items) add(book.tallies[id].id, item.when);
    }
    for (auto const& constellation : book.constellations) {
        auto const& id = book.syntax(constellation).id.text;
        for (auto const& item : book.tallies[constellation.total].items) add(id, item.when);
        add(id, constellation.reached);
    }
    for (auto const& rule : book.rules) add(book.syntax(rule).id.text, rule.when);
}

void Coverage::add(std::string const& part, CompiledCondition const& condition) {
    nodes_.push_back({part, &condition, {}});
    for (auto const& child : condition.children) add(part, child);
}

void Coverage::see(std::span<Truth const> values) {
    for (auto& node : nodes_) {
        auto const value = value_of(node.condition->literal, values);
        ++node.seen[static_cast<std::size_t>(value)];
    }
}

std::size_t Coverage::covered() const {
    return static_cast<std::size_t>(std::count_if(
        nodes_.begin(), nodes_.end(), [](CoveredNode const& node) { return node.covered(); }));
}

double Coverage::percent() const {
    if (nodes_.empty()) return 100;
    return 100.0 * static_cast<double>(covered()) / static_cast<double>(nodes_.size());
}

}  // namespace asterism
