// SPDX-License-Identifier: MIT
#include "compile/circuit_builder.h"

#include <algorithm>

namespace asterism {

namespace {

/// The place of a thing in a list, at whose end it is added when it is new.
template <class T>
std::uint32_t place_in(std::vector<T>& list, T const& thing) {
    auto const found = std::find(list.begin(), list.end(), thing);
    auto const index = static_cast<std::uint32_t>(found - list.begin());
    if (found == list.end()) list.push_back(thing);
    return index;
}

}  // namespace

CircuitBuilder::CircuitBuilder(CompiledRulebook& book) : book_(book) {
    for (auto const& fact : book.facts)
        facts_.emplace(std::tuple(fact.kind, fact.index, fact.detail), fact.node);
}

Literal CircuitBuilder::fact(Fact::Kind kind, std::uint32_t index, std::uint32_t detail) {
    auto const key = std::tuple(kind, index, detail);
    if (auto const known = facts_.find(key); known != facts_.end()) return {known->second, false};
    auto const node = book_.circuit.add_fact();
    book_.facts.push_back({kind, index, detail, node});
    facts_.emplace(key, node);
    return {node, false};
}

Literal CircuitBuilder::one_side(FindingId finding, Fact::Kind side) {
    auto const key = std::pair(finding, side);
    if (auto const known = sides_.find(key); known != sides_.end()) return known->second;
    std::vector<Literal> ways{fact(side, finding)};
    for (auto const child : book_.ontology->at(finding).children) {
        bool const paired = book_.ontology->at(child).laterality == Laterality::paired;
        if (paired) ways.push_back(one_side(child, side));
    }
    auto const literal = any(ways);
    sides_.emplace(key, literal);
    return literal;
}

Literal CircuitBuilder::on_side(FindingId finding, SideWanted side) {
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

Literal CircuitBuilder::graded(FindingId finding, std::uint32_t grade) {
    return fact(Fact::Kind::grade, finding, grade);
}

Literal CircuitBuilder::familial(FindingId finding) { return fact(Fact::Kind::familial, finding); }

std::uint32_t CircuitBuilder::test_index(MeasureTest const& test) {
    return place_in(book_.measure_tests, test);
}

std::uint32_t CircuitBuilder::range_index(Range const& range) {
    return place_in(book_.ranges, range);
}

Literal CircuitBuilder::age(Range const& hours) {
    return fact(Fact::Kind::age, 0, range_index(hours));
}

Literal CircuitBuilder::gestation(Range const& days) {
    return fact(Fact::Kind::gestation, 0, range_index(days));
}

Literal CircuitBuilder::sex(Sex sex) {
    return fact(sex == Sex::female ? Fact::Kind::female : Fact::Kind::male, 0);
}

Literal CircuitBuilder::gate(std::int64_t threshold, std::vector<Weighted> inputs) {
    return book_.circuit.add_gate(threshold, std::move(inputs));
}

}  // namespace asterism
