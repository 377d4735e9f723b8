// SPDX-License-Identifier: MIT
#include "compile/signs.h"

#include <algorithm>

namespace asterism {

namespace {

void collect(CompiledTally const& tally, std::vector<Literal>& signs) {
    for (auto const& key : tally.keys) {
        for (auto const& member : key.members) signs.push_back(member.counts);
    }
    for (auto const& item : tally.items) signs.push_back(item.when.literal);
}

/// What stands below a negation speaks for nothing.
void collect(CompiledRulebook const& book, CompiledCondition const& condition,
             std::vector<Literal>& signs) {
    if (!condition.condition || condition.condition->negates()) return;
    auto const leaf = condition.condition->leaf();
    switch (leaf.kind) {
        case Leaf::Kind::finding:
            if (!leaf.wants_absent) signs.push_back(book.present[leaf.index]);
            break;
        case Leaf::Kind::tally:
            if (!leaf.at_most) collect(book.tallies[leaf.index], signs);
            break;
        case Leaf::Kind::constellation:
            collect(book, book.constellations[leaf.index].reached, signs);
            break;
        default: break;
    }
    for (auto const& child : condition.children) collect(book, child, signs);
}

}  // namespace

std::vector<Literal> signs_of(CompiledRulebook const& book, CompiledCondition const& condition) {
    std::vector<Literal> signs;
    collect(book, condition, signs);
    std::ranges::sort(signs);
    signs.erase(std::unique(signs.begin(), signs.end()), signs.end());
    return signs;
}

}  // namespace asterism
