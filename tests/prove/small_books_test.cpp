// SPDX-License-Identifier: MIT
// Random small books with random promises, against going through every case: what holds is broken
// by no case, and what some case breaks is found, with a case that a second, naive evaluator judges
// the same.
#include <algorithm>

#include <fmt/format.h>

#include "assess/facts.h"
#include "assess/verdicts.h"
#include "oracle/case_text.h"
#include "oracle/random_cases.h"
#include "oracle/small_world.h"
#include "review/prove.h"
#include "testing.h"

using namespace asterism;
using oracle::Dice;

namespace {

constexpr std::string_view head = R"(
rulebook: { id: r, title: Random, version: 1.0.0, effective: 2031-01-01, language: 1, ontology: small }
services: [ { service: genetics, label: genetics }, { service: surgery, label: surgery } ]
keys:
  - { key: ear, kind: field, because: One cause. }
  - { key: hand, kind: field, because: One cause. }
  - { key: organ, kind: system, because: One organ., covers: [hand] }
classes:
  - { finding: ear-change, class: minor-variant, key: ear, because: x, sources: common-practice }
  - { finding: low-ear, class: minor-variant, key: ear, because: x, sources: common-practice }
  - { finding: crease, class: minor-variant, key: hand, because: x, sources: common-practice }
  - { finding: chin, class: major-anomaly, key: organ, because: x, sources: common-practice }
  - { finding: dimple, class: red-flag, because: x, sources: common-practice }
tallies:
  - { tally: minors, label: minor variants, count: minor-variant }
  - { tally: majors, label: major anomalies, count: [major-anomaly, red-flag] }
derived:
  - { derive: dimple, when: { measured: width, mm: { above: 5 } }, because: x, sources: common-practice }
)";

std::string leaf(Dice& dice) {
    static std::vector<std::string> const leaves{"{ present: ear-change }",
                                                 "{ present: low-ear }",
                                                 "{ present: crease }",
                                                 "{ present: crease, side: left }",
                                                 "{ present: crease, side: both }",
                                                 "{ present: chin, grade: marked }",
                                                 "{ present: dimple }",
                                                 "{ absent: chin }",
                                                 "{ tally: minors, at-least: 1 }",
                                                 "{ tally: minors, at-least: 2 }",
                                                 "{ tally: minors, at-most: 1 }",
                                                 "{ tally: majors, at-least: 1 }",
                                                 "{ sex: male }",
                                                 "{ gestation: { below: 37w0d } }"};
    return dice.one_of(leaves);
}

std::string condition(Dice& dice, int depth) {
    if (depth == 0 || dice.in_100(40)) return leaf(dice);
    auto const one = condition(dice, depth - 1);
    auto const two = condition(dice, depth - 1);
    switch (dice.below(4)) {
        case 0: return fmt::format("{{ all: [ {}, {} ] }}", one, two);
        case 1: return fmt::format("{{ any: [ {}, {} ] }}", one, two);
        case 2: return fmt::format("{{ none: [ {} ] }}", one);
        default: return fmt::format("{{ at-least: 2, of: [ {}, {}, {} ] }}", one, two, leaf(dice));
    }
}

std::string urgency(Dice& dice) {
    static std::vector<std::string> const all{"routine", "urgent", "same-day", "emergency"};
    return dice.one_of(all);
}

std::string service(Dice& dice) { return dice.in_100(50) ? "genetics" : "surgery"; }

std::string rule(int number, std::string const& when, std::string const& to,
                 std::string const& how_soon) {
    return fmt::format(
        "  - {{ rule: r{}, when: {}, suggest: {{ service: {}, urgency: {} }}, because: x, "
        "strength: study, sources: common-practice }}\n",
        number, when, to, how_soon);
}

std::string outcome(Dice& dice) {
    switch (dice.below(4)) {
        case 0: return fmt::format("{{ suggest: {}, at-least: {} }}", service(dice), urgency(dice));
        case 1: return fmt::format("{{ never: {}, at-least: {} }}", service(dice), urgency(dice));
        case 2: return fmt::format("{{ holds: {} }}", condition(dice, 1));
        default: return fmt::format("{{ never-met: {} }}", condition(dice, 1));
    }
}

std::string promise_parts(Dice& dice) {
    static std::vector<std::string> const classes{"minor-variant", "major-anomaly", "red-flag"};
    switch (dice.below(4)) {
        case 0:
            return fmt::format("adding: {}, then: {{ keeps: {} }}", dice.one_of(classes),
                               dice.in_100(50) ? "urgency" : "services");
        case 1: {
            auto const more = dice.in_100(50) ? ", alone: true" : "";
            auto const kin = dice.in_100(30) ? ", familial: true" : "";
            return fmt::format("for-each: {}{}{}, then: {}", dice.one_of(classes), more, kin,
                               outcome(dice));
        }
        default: return fmt::format("when: {}, then: {}", condition(dice, 1), outcome(dice));
    }
}

std::string with_promise(std::string const& rules, std::string const& parts) {
    return fmt::format(
        "{}rules:\n{}promises:\n  - {{ promise: p, {}, because: x, sources: common-practice }}\n",
        head, rules, parts);
}

std::optional<Promises> promises_of(std::string const& text) {
    Diagnostics diagnostics;
    auto const subject =
        oracle::subject(oracle::book_from(text), oracle::small_ontology(), diagnostics);
    if (!subject) return std::nullopt;
    return compile_promises(subject->compiled, diagnostics);
}

bool of_other_sex(Case const& baby) {
    auto const mismatch = [&](Statement const& s) {
        auto const sex = oracle::small_ontology()->at(s.finding).sex;
        return sex != Sex::not_given && (baby.sex == Sex::female || baby.sex == Sex::male) &&
               sex != baby.sex;
    };
    return std::any_of(baby.present.begin(), baby.present.end(), mismatch);
}

/// Every case that these books can tell apart; the crease in fewer ways than it can be said.
void every_case(std::function<void(Case const&)> const& visit) {
    static std::vector<Case> const all = [] {
        std::vector<Case> cases;
        oracle::for_each_small_case({"ear", "low-ear", "chin", "dimple", "crease"},
                                    [&](Case const& baby) { cases.push_back(baby); });
        oracle::for_each_small_case({"crease", "deep-crease", "chin", "steps"},
                                    [&](Case const& baby) { cases.push_back(baby); });
        oracle::for_each_small_case({"dimple", "width", "sex", "gestation", "ear", "steps"},
                                    [&](Case const& baby) { cases.push_back(baby); });
        oracle::for_each_small_case({"ear", "low-ear", "sex", "gestation", "steps"},
                                    [&](Case const& baby) { cases.push_back(baby); });
        return cases;
    }();
    for (auto const& baby : all) {
        if (!of_other_sex(baby)) visit(baby);
    }
}

std::optional<Case> first_that_breaks(Promises const& promises, CompiledPromise const& promise) {
    std::optional<Case> found;
    every_case([&](Case const& baby) {
        std::string finding;
        if (!found && !broken_by(promises, promise, baby, finding).empty()) found = baby;
    });
    return found;
}

/// What a naive evaluator that shares no code with the engine says of a counterexample's services.
void same_by_the_oracle(std::string const& text, Case const& baby) {
    auto const subject = oracle::subject(text, oracle::small_ontology());
    CHECK(oracle::disagreements(*subject, baby).empty());
}

struct Count {
    int holds = 0, broken = 0, not_proven = 0;
};

void compare(std::string const& text, Count& count) {
    auto const promises = promises_of(text);
    if (!promises) return;
    auto const& promise = promises->all.front();
    auto const proof = prove(*promises, promise, {});
    INFO(text);
    auto const breaking = first_that_breaks(*promises, promise);
    CAPTURE(to_text(proof.result));
    CAPTURE(proof.why_not);
    std::string finding;
    if (breaking) {
        finding = broken_by(*promises, promise, *breaking, finding) + "\n" +
                  oracle::case_text(*breaking, *oracle::small_ontology());
    }
    CAPTURE(finding);
    if (proof.result == ProofResult::holds) {
        ++count.holds;
        CHECK_FALSE(breaking);
    } else if (proof.result == ProofResult::broken) {
        ++count.broken;
        REQUIRE(proof.counterexample);
        CHECK_FALSE(broken_by(*promises, promise, *proof.counterexample, finding).empty());
        same_by_the_oracle(text, *proof.counterexample);
    } else {
        ++count.not_proven;
        CHECK_FALSE(breaking);
    }
}

}  // namespace

TEST_CASE("random books and promises: the proof and going through every case agree") {
    Dice dice(oracle::seed_from_environment());
    Count count;
    for (std::size_t round = 0; round < oracle::cases_from_environment(150); ++round) {
        std::string rules;
        for (int i = 0; i < 3; ++i)
            rules += rule(i, condition(dice, 2), service(dice), urgency(dice));
        compare(with_promise(rules, promise_parts(dice)), count);
    }
    CHECK(count.holds > 5);
    CHECK(count.broken > 20);
    CHECK(count.not_proven * 20 < count.holds + count.broken);
}

TEST_CASE("a break planted in a random book is always caught") {
    Dice dice(oracle::seed_from_environment() + 1);
    int planted = 0;
    for (int round = 0; round < 120; ++round) {
        auto const when = condition(dice, 2);
        auto const to = service(dice);
        std::string others;
        for (int i = 1; i < 3; ++i) others += rule(i, condition(dice, 2), service(dice), "routine");
        auto const parts =
            fmt::format("when: {}, then: {{ suggest: {}, at-least: urgent }}", when, to);
        auto const sound = promises_of(with_promise(rule(0, when, to, "same-day") + others, parts));
        if (!sound) continue;
        CHECK(prove(*sound, sound->all.front(), {}).result == ProofResult::holds);
        std::vector<std::string> const faults{
            rule(0, when, to, "routine"),
            rule(0, when, to == "surgery" ? "genetics" : "surgery", "same-day"),
            rule(0, fmt::format("{{ all: [ {}, {{ gestation: {{ at-least: 37w0d }} }} ] }}", when),
                 to, "same-day")};
        for (auto const& fault : faults) {
            auto const text = with_promise(fault + others, parts);
            auto const faulty = promises_of(text);
            if (!faulty || !first_that_breaks(*faulty, faulty->all.front())) continue;
            ++planted;
            INFO(text);
            auto const proof = prove(*faulty, faulty->all.front(), {});
            CHECK(proof.result == ProofResult::broken);
            if (proof.counterexample) same_by_the_oracle(text, *proof.counterexample);
        }
    }
    CHECK(planted > 100);
}
