// SPDX-License-Identifier: MIT
#include "compile/book_builder.h"

#include <algorithm>

#include <fmt/format.h>

#include "compile/counting.h"

namespace asterism {

BookBuilder::BookBuilder(CompiledRulebook& result, BookConditions const& conditions,
                         Diagnostics& diagnostics)
    : CircuitBuilder(result),
      conditions_(conditions),
      diagnostics_(diagnostics),
      tally_state_(conditions.tally_items.size()),
      constellation_state_(conditions.reached.size()) {}

Literal BookBuilder::own_state(FindingId finding) {
    bool const open = book_.ontology->at(finding).history && !essential_.contains(finding);
    return fact(open ? Fact::Kind::history_assumed : Fact::Kind::finding, finding);
}

/// Present: by its own state, by derivation, or because a child is.
Literal BookBuilder::present(FindingId finding) {
    auto const key = std::pair(finding, essential_.contains(finding));
    if (auto const known = present_.find(key); known != present_.end()) return known->second;
    std::vector<Literal> ways{own_state(finding)};
    if (auto const derived = derivation(finding)) ways.push_back(*derived);
    for (auto const child : book_.ontology->at(finding).children) ways.push_back(present(child));
    auto const literal = any(ways);
    present_.emplace(key, literal);
    return literal;
}

std::optional<Literal> BookBuilder::derivation(FindingId finding) {
    if (!book_.derived[finding]) return std::nullopt;
    auto& derived = *book_.derived[finding];
    if (deriving_.contains(finding)) {
        report_cycle(book_.book->derived[derived.syntax].finding.span, "derived finding");
        return std::nullopt;
    }
    if (!derived.when->condition) build_derivation(finding);
    return derived.when->condition ? std::optional(derived.when.literal) : std::nullopt;
}

void BookBuilder::build_derivation(FindingId finding) {
    auto& derived = *book_.derived[finding];
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

Literal BookBuilder::measured(MeasureTest const& test) {
    auto const index = test_index(test);
    if (!deriving_now_) return fact(Fact::Kind::measure, test.measure, index);
    auto& used = book_.derived[*deriving_now_]->tests;
    if (std::find(used.begin(), used.end(), index) == used.end()) used.push_back(index);
    bool const red_flag = book_.class_of(*deriving_now_) == FindingClass::red_flag;
    return fact(red_flag ? Fact::Kind::measure_red_flag : Fact::Kind::measure_by_eye, test.measure,
                index);
}

Literal BookBuilder::tally_at_least(TallyId tally, Tenths threshold) {
    build_tally(tally);
    return gate(threshold, book_.tallies[tally].inputs);
}

Literal BookBuilder::reached(ConstellationId constellation) {
    build_constellation(constellation);
    return book_.constellations[constellation].reached.literal;
}

void BookBuilder::build_tally(TallyId id) {
    auto& tally = book_.tallies[id];
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
    if (!tally.count.empty()) build_counted_keys(book_, *this, tally);
    essential_ = essential;
    tally_state_[id] = 2;
}

void BookBuilder::build_constellation(ConstellationId id) {
    auto& constellation = book_.constellations[id];
    if (constellation_state_[id] == 1)
        report_cycle(book_.syntax(constellation).id.span, "constellation");
    if (constellation_state_[id] != 0) return;
    constellation_state_[id] = 1;
    auto const essential = std::exchange(essential_, {});
    build_tally(constellation.total);
    for (auto const group : constellation.groups) build_tally(group);
    if (conditions_.reached[id])
        constellation.reached = asterism::compile(conditions_.reached[id], *this);
    essential_ = essential;
    constellation_state_[id] = 2;
}

void BookBuilder::build_derived() {
    for (FindingId finding = 0; finding < book_.derived.size(); ++finding) derivation(finding);
}

CompiledCondition BookBuilder::build_rule(ConditionPtr const& condition,
                                          std::set<FindingId> essential) {
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
