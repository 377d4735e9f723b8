// SPDX-License-Identifier: MIT
#include "review/promise_builder.h"

#include <algorithm>

namespace asterism {

PromiseBuilder::PromiseBuilder(CompiledRulebook& book) : book_(book) {
    for (auto const& fact : book.facts) {
        facts_.emplace(std::tuple(fact.kind, fact.index, fact.detail), fact.node);
    }
}

Literal PromiseBuilder::fact(Fact::Kind kind, std::uint32_t index, std::uint32_t detail) {
    auto const key = std::tuple(kind, index, detail);
    if (auto const known = facts_.find(key); known != facts_.end()) return {known->second, false};
    auto const node = book_.circuit.add_fact();
    book_.facts.push_back({kind, index, detail, node});
    facts_.emplace(key, node);
    return {node, false};
}

Literal PromiseBuilder::one_side(FindingId finding, Fact::Kind side) {
    std::vector<Literal> ways{fact(side, finding)};
    for (auto const child : book_.ontology->at(finding).children) {
        bool const paired = book_.ontology->at(child).laterality == Laterality::paired;
        if (paired) ways.push_back(one_side(child, side));
    }
    return any(ways);
}

Literal PromiseBuilder::on_side(FindingId finding, SideWanted side) {
    auto const left = one_side(finding, Fact::Kind::left);
    auto const right = one_side(finding, Fact::Kind::right);
    switch (side) {
        case SideWanted::left: return left;
        case SideWanted::right: return right;
        case SideWanted::both: return all({left, right});
        case SideWanted::one: return all({present(finding), !all({left, right})});
    }
    return left;
}

Literal PromiseBuilder::graded(FindingId finding, std::uint32_t grade) {
    return fact(Fact::Kind::grade, finding, grade);
}

Literal PromiseBuilder::familial(FindingId finding) { return fact(Fact::Kind::familial, finding); }

Literal PromiseBuilder::tally_at_least(TallyId tally, Tenths threshold) {
    return gate(threshold, book_.tallies[tally].inputs);
}

Literal PromiseBuilder::reached(ConstellationId constellation) {
    return book_.constellations[constellation].reached.literal;
}

Literal PromiseBuilder::measured(MeasureTest const& test) {
    auto& tests = book_.measure_tests;
    auto const found = std::find(tests.begin(), tests.end(), test);
    auto const index = static_cast<std::uint32_t>(found - tests.begin());
    if (found == tests.end()) tests.push_back(test);
    return fact(Fact::Kind::measure, test.measure, index);
}

std::uint32_t PromiseBuilder::range_index(Range const& range) {
    auto& ranges = book_.ranges;
    auto const found = std::find(ranges.begin(), ranges.end(), range);
    auto const index = static_cast<std::uint32_t>(found - ranges.begin());
    if (found == ranges.end()) ranges.push_back(range);
    return index;
}

Literal PromiseBuilder::age(Range const& hours) {
    return fact(Fact::Kind::age, 0, range_index(hours));
}

Literal PromiseBuilder::gestation(Range const& days) {
    return fact(Fact::Kind::gestation, 0, range_index(days));
}

Literal PromiseBuilder::sex(Sex sex) {
    return fact(sex == Sex::female ? Fact::Kind::female : Fact::Kind::male, 0);
}

Literal PromiseBuilder::gate(std::int64_t threshold, std::vector<Weighted> inputs) {
    return book_.circuit.add_gate(threshold, std::move(inputs));
}

}  // namespace asterism
