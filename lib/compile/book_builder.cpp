// SPDX-License-Identifier: MIT
#include "compile/book_builder.h"

#include <algorithm>

#include <fmt/format.h>

#include "compile/counting.h"

namespace asterism {

BookBuilder::BookBuilder(CompiledRulebook& result, BookConditions const& conditions, Diagnostics& diagnostics)
    : result_(result), conditions_(conditions), diagnostics_(diagnostics),
      tally_state_(conditions.tally_items.size()), constellation_state_(conditions.reached.size()) {}

Literal BookBuilder::fact(Fact::Kind kind, std::uint32_t index, std::uint32_t detail) {
    auto const key = std::tuple(kind, index, detail);
    if (auto const known = facts_.find(key); known != facts_.end()) return {known->second, false};
    auto const node = result_.circuit.add_fact();
    result_.facts.push_back({kind, index, detail, node});
    facts_.emplace(key, node);
    return {node, false};
}

Literal BookBuilder::own_state(FindingId finding) {
    bool const open = result_.ontology->at(finding).history && !essential_.contains(finding);
    return fact(open ? Fact::Kind::history_assumed : Fact::Kind::finding, finding);
}

/// Present: by its own state, by derivation, or because a child is.
Literal BookBuilder::present(FindingId finding) {
    auto const key = std::pair(finding, essential_.contains(finding));
    if (auto const known = present_.find(key); known != present_.end()) return known->second;
    std::vector<Literal> ways{own_state(finding)};
    if (auto const derived = derivation(finding)) ways.push_back(*derived);
    for (auto const child : result_.ontology->at(finding).children) ways.push_back(present(child));
    auto const literal = any(ways);
    present_.emplace(key, literal);
    return literal;
}

std::optional<Literal> BookBuilder::derivation(FindingId finding) {
    if (!result_.derived[finding]) return std::nullopt;
    auto& derived = *result_.derived[finding];
    if (deriving_.contains(finding)) {
        report_cycle(result_.book->derived[derived.syntax].finding.span, "derived finding");
        return std::nullopt;
    }
    if (!derived.when->condition) build_derivation(finding);
    return derived.when->condition ? std::optional(derived.when.literal) : std::nullopt;
}

void BookBuilder::build_derivation(FindingId finding) {
    auto& derived = *result_.derived[finding];
    auto const& condition = conditions_.derived[derived.syntax];
    if (!condition) return;
    deriving_.insert(finding);
    auto const outer = std::exchange(deriving_now_, finding);
    auto const essential = std::exchange(essential_, {});
    derived.when = asterism::compile(condition, *this);
    essential_ = essential;
    deriving_now_ = outer;
    deriving_.erase(finding);
}

Literal BookBuilder::one_side(FindingId finding, Fact::Kind side) {
    auto const key = std::pair(finding, side);
    if (auto const known = sides_.find(key); known != sides_.end()) return known->second;
    std::vector<Literal> ways{fact(side, finding)};
    for (auto const child : result_.ontology->at(finding).children) {
        if (result_.ontology->at(child).laterality == Laterality::paired) ways.push_back(one_side(child, side));
    }
    auto const literal = any(ways);
    sides_.emplace(key, literal);
    return literal;
}

Literal BookBuilder::on_side(FindingId finding, SideWanted side) {
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

Literal BookBuilder::graded(FindingId finding, std::uint32_t grade) { return fact(Fact::Kind::grade, finding, grade); }
Literal BookBuilder::familial(FindingId finding) { return fact(Fact::Kind::familial, finding); }

Literal BookBuilder::measured(MeasureTest const& test) {
    auto& tests = result_.measure_tests;
    auto const found = std::find(tests.begin(), tests.end(), test);
    auto const index = static_cast<std::uint32_t>(found - tests.begin());
    if (found == tests.end()) tests.push_back(test);
    if (!deriving_now_) return fact(Fact::Kind::measure, test.measure, index);
    auto& used = result_.derived[*deriving_now_]->tests;
    if (std::find(used.begin(), used.end(), index) == used.end()) used.push_back(index);
    bool const red_flag = result_.class_of(*deriving_now_) == FindingClass::red_flag;
    return fact(red_flag ? Fact::Kind::measure_red_flag : Fact::Kind::measure_by_eye, test.measure, index);
}

std::uint32_t BookBuilder::range_index(Range const& range) {
    auto& ranges = result_.ranges;
    auto const found = std::find(ranges.begin(), ranges.end(), range);
    if (found == ranges.end()) ranges.push_back(range);
    return static_cast<std::uint32_t>(std::find(ranges.begin(), ranges.end(), range) - ranges.begin());
}

Literal BookBuilder::age(Range const& hours) { return fact(Fact::Kind::age, 0, range_index(hours)); }
Literal BookBuilder::gestation(Range const& days) { return fact(Fact::Kind::gestation, 0, range_index(days)); }
Literal BookBuilder::sex(Sex sex) { return fact(sex == Sex::female ? Fact::Kind::female : Fact::Kind::male, 0); }

Literal BookBuilder::gate(std::int64_t threshold, std::vector<Weighted> inputs) {
    return result_.circuit.add_gate(threshold, std::move(inputs));
}

Literal BookBuilder::tally_at_least(TallyId tally, Tenths threshold) {
    build_tally(tally);
    return gate(threshold, result_.tallies[tally].inputs);
}

Literal BookBuilder::reached(ConstellationId constellation) {
    build_constellation(constellation);
    return result_.constellations[constellation].reached.literal;
}

void BookBuilder::build_tally(TallyId id) {
    auto& tally = result_.tallies[id];
    if (tally_state_[id] == 1) report_cycle(tally.span, "tally");
    if (tally_state_[id] != 0) return;
    tally_state_[id] = 1;
    auto const essential = std::exchange(essential_, {});
    for (std::size_t i = 0; i < tally.items.size(); ++i) {
        auto const& condition = conditions_.tally_items[id][i];
        if (!condition) continue;
        tally.items[i].when = asterism::compile(condition, *this);
        tally.inputs.push_back({tally.items[i].when.literal, tally.items[i].points});
    }
    if (!tally.count.empty()) build_counted_keys(result_, *this, tally);
    essential_ = essential;
    tally_state_[id] = 2;
}

void BookBuilder::build_constellation(ConstellationId id) {
    auto& constellation = result_.constellations[id];
    if (constellation_state_[id] == 1) report_cycle(result_.syntax(constellation).id.span, "constellation");
    if (constellation_state_[id] != 0) return;
    constellation_state_[id] = 1;
    auto const essential = std::exchange(essential_, {});
    build_tally(constellation.total);
    for (auto const group : constellation.groups) build_tally(group);
    if (conditions_.reached[id]) constellation.reached = asterism::compile(conditions_.reached[id], *this);
    essential_ = essential;
    constellation_state_[id] = 2;
}

void BookBuilder::build_derived() {
    for (FindingId finding = 0; finding < result_.derived.size(); ++finding) derivation(finding);
}

CompiledCondition BookBuilder::build_rule(ConditionPtr const& condition, std::set<FindingId> essential) {
    if (!condition) return {};
    essential_ = std::move(essential);
    auto compiled = asterism::compile(condition, *this);
    essential_.clear();
    return compiled;
}

void BookBuilder::report_cycle(Span const& span, std::string_view what) {
    diagnostics_.error("cycle", span, fmt::format("this {} depends on itself", what));
}

}  // namespace asterism
