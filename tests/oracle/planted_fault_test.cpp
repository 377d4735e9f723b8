// SPDX-License-Identifier: MIT
/// The comparison can fail: each fault planted in a copy of a compiled book, one at a time, makes
/// some small case disagree.
#include "testing.h"

#include <cmath>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "oracle/disputed.h"
#include "oracle/engine.h"
#include "oracle/faulty_book.h"
#include "oracle/small_world.h"

namespace asterism::oracle {

namespace {

/// A case with what the oracle says of it.
struct Judged {
    Case baby;
    Answer answer;
};

/// Each part of the book with all cases that bear on it.
std::vector<Judged> judge_cases() {
    auto const& subject = book_to_plant_faults_in();
    std::vector<Judged> judged;
    auto const judge = [&](Case const& baby) {
        if (!disputed(subject, baby)) judged.push_back({baby, subject.oracle->answer(baby, {})});
    };
    for_each_small_case({"ear", "low-ear", "crease", "chin", "steps"}, judge);
    for_each_small_case({"crease", "deep-crease", "low-ear", "steps"}, judge);
    for_each_small_case({"dimple", "width", "depth", "steps"}, judge);
    for_each_small_case({"sex", "gestation", "age", "breech", "steps"}, judge);
    return judged;
}

std::vector<Judged> const& judged_cases() {
    static auto const judged = judge_cases();
    return judged;
}

CompiledRulebook const& sound_book() { return book_to_plant_faults_in().compiled; }

bool noticed(CompiledRulebook const& faulty) {
    for (auto const& [baby, answer] : judged_cases()) {
        if (ask_engine(faulty, baby).answer != answer) return true;
    }
    return false;
}

/// The values as they would be with another threshold at one gate.
std::vector<Truth> with_threshold_moved(std::vector<Truth> values, NodeId faulty, std::int64_t by) {
    auto const& circuit = sound_book().circuit;
    for (NodeId node = faulty; node < circuit.size(); ++node) {
        if (circuit.is_fact(node)) continue;
        auto const threshold = circuit.threshold(node) + (node == faulty ? by : 0);
        auto const bounds = sum(circuit.inputs(node), values);
        values[node] = bounds.low >= threshold    ? Truth::yes
                       : bounds.high >= threshold ? Truth::unknown
                                                  : Truth::no;
    }
    return values;
}

bool noticed_threshold(NodeId gate, std::int64_t by) {
    auto const& book = sound_book();
    for (auto const& [baby, answer] : judged_cases()) {
        auto const now = evaluate(book, baby, Rest::unknown).values;
        auto const rest = evaluate(book, baby, Rest::normal).values;
        auto const faulty = read_off(book, with_threshold_moved(now, gate, by),
                                     with_threshold_moved(rest, gate, by));
        if (faulty != answer) return true;
    }
    return false;
}

/// How far a threshold must move to mean something else: weights are 1, or points in tenths.
std::int64_t least_weight(NodeId gate) {
    std::int64_t least = INT64_MAX;
    for (auto const& input : sound_book().circuit.inputs(gate))
        least = std::min(least, input.weight);
    return least;
}

std::optional<Fact::Kind> wrong_kind(Fact::Kind kind) {
    switch (kind) {
        case Fact::Kind::left: return Fact::Kind::right;
        case Fact::Kind::right: return Fact::Kind::left;
        case Fact::Kind::finding: return Fact::Kind::history_assumed;
        case Fact::Kind::history_assumed: return Fact::Kind::finding;
        case Fact::Kind::measure: return Fact::Kind::measure_by_eye;
        case Fact::Kind::measure_red_flag: return Fact::Kind::measure_by_eye;
        case Fact::Kind::male: return Fact::Kind::female;
        default: return std::nullopt;
    }
}

}  // namespace

TEST_CASE("without a fault the small cases agree") {
    CHECK_FALSE(noticed(sound_book()));
    CHECK(judged_cases().size() > 5000);
}

TEST_CASE("a threshold too high or too low at any gate is noticed") {
    std::vector<std::string> missed;
    std::size_t planted = 0;
    for (NodeId gate = 0; gate < sound_book().circuit.size(); ++gate) {
        if (sound_book().circuit.is_fact(gate)) continue;
        for (auto const by : {-least_weight(gate), least_weight(gate)}) {
            ++planted;
            if (!noticed_threshold(gate, by)) missed.push_back(fmt::format("{}: {:+}", gate, by));
        }
    }
    MESSAGE(fmt::format("{} thresholds moved, missed: {}", planted, fmt::join(missed, ", ")));
    CHECK(planted >= 20);
    CHECK(missed.empty());
}

TEST_CASE("a fact read as another is noticed") {
    auto const& book = sound_book();
    std::size_t planted = 0;
    for (std::size_t i = 0; i < book.facts.size(); ++i) {
        auto const kind = wrong_kind(book.facts[i].kind);
        if (!kind) continue;
        auto faulty = book;
        faulty.facts[i].kind = *kind;
        ++planted;
        CHECK_MESSAGE(noticed(faulty), "fact ", i, " of kind ", static_cast<int>(*kind), " of ",
                      book.facts[i].index);
    }
    CHECK(planted >= 8);
}

TEST_CASE("a limit elsewhere, or open instead of closed, is noticed") {
    auto const& book = sound_book();
    for (std::size_t i = 0; i < book.measure_tests.size(); ++i) {
        auto faulty = book;
        auto& range = faulty.measure_tests[i].range;
        (std::isfinite(range.low) ? range.low : range.high) += 2.6;
        CHECK_MESSAGE(noticed(faulty), "measure ", i);
    }
    for (std::size_t i = 0; i < book.ranges.size(); ++i) {
        auto faulty = book;
        faulty.ranges[i].low_open = !faulty.ranges[i].low_open;
        faulty.ranges[i].high_open = !faulty.ranges[i].high_open;
        CHECK_MESSAGE(noticed(faulty), "range ", i);
    }
    CHECK(book.measure_tests.size() + book.ranges.size() == 4);
}

TEST_CASE("a rule turned round, or of another urgency, is noticed") {
    auto const& book = sound_book();
    for (std::size_t i = 0; i < book.rules.size(); ++i) {
        auto turned = book;
        turned.rules[i].when.literal.negated = !turned.rules[i].when.literal.negated;
        CHECK_MESSAGE(noticed(turned), "rule ", i);
        auto other = book;
        other.rules[i].suggest[0].urgency = Urgency::emergency;
        CHECK_MESSAGE(noticed(other), "rule ", i);
    }
}

TEST_CASE("a tally that counts too much is noticed") {
    auto const& book = sound_book();
    for (std::size_t i = 0; i < book.tallies.size(); ++i) {
        auto faulty = book;
        faulty.tallies[i].inputs.at(0).weight += 5;
        CHECK_MESSAGE(noticed(faulty), faulty.tallies[i].id);
    }
}

TEST_CASE("open questions of the counting that are not tried both ways are noticed") {
    auto faulty = sound_book();
    REQUIRE_FALSE(faulty.splits.empty());
    faulty.splits.clear();
    CHECK(noticed(faulty));
}

}  // namespace asterism::oracle
