// SPDX-License-Identifier: MIT
// Strata: derived findings before inheritance, before counting, before
// constellations, before rules, in whatever order the book's sections write
// them.
#include "compile/checks.h"
#include "support/small_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

std::string derive(std::string const& finding, std::string const& when) {
    return "  - { derive: " + finding + ", when: " + when + ", because: x., sources: [s] }\n";
}

CompiledRulebook with_derived(std::string const& derived, std::string const& rules) {
    auto loaded = load(small_book_head + "derived:\n" + derived + "rules:\n" + rules);
    for (auto const& diagnostic : loaded.diagnostics.sorted())
        MESSAGE(diagnostic.span.place(), ": ", diagnostic.message);
    REQUIRE(loaded.book);
    return std::move(*loaded.book);
}

Diagnostic cycle_of(std::string const& text) {
    auto const loaded = load(text);
    CHECK_FALSE(loaded.book);
    REQUIRE_FALSE(loaded.diagnostics.empty());
    auto const first = loaded.diagnostics.sorted().front();
    CHECK(first.code == "cycle");
    return first;
}

}  // namespace

TEST_CASE("a derived finding may rest on another, written before or after it") {
    auto const fold_from_slant = derive("fold", "{ present: slant }");
    auto const crease_from_fold = derive("crease", "{ present: fold }");
    for (auto const& order :
         {fold_from_slant + crease_from_fold, crease_from_fold + fold_from_slant}) {
        auto const book =
            with_derived(order, rule("r", "{ present: crease }", "genetics", "routine"));
        CHECK(verdict(judge(book, "findings: [slant]\n"), "genetics") == "suggested");
        CHECK(verdict(judge(book, "examined: all\n"), "genetics") == "not-suggested");
    }
}

TEST_CASE("a derived finding is inherited by its parents and counted by its class") {
    auto const book =
        with_derived(derive("cloudy", "{ present: slant }"),
                     rule("r", "{ present: lens }", "ophthalmology", "routine") +
                         rule("m", "{ tally: majors, at-least: 1 }", "genetics", "routine"));
    auto const answer = judge(book, "examined: all\nfindings: [slant]\n");
    CHECK(verdict(answer, "ophthalmology") == "suggested");
    CHECK(verdict(answer, "genetics") == "suggested");
    CHECK(bounds(answer, "majors") == "1..1");
    auto const& evidence = referral(answer, "ophthalmology").reasons.front().evidence;
    REQUIRE(evidence.size() == 1);
    CHECK(evidence.front().id == "cloudy");
    CHECK(evidence.front().how == "derived");
}

TEST_CASE("what a derived finding rests on being unknown leaves it unknown") {
    auto const book =
        with_derived(derive("digit", "{ all: [{ present: slant }, { present: fold }] }"),
                     rule("r", "{ present: digit }", "genetics", "routine"));
    CHECK(verdict(judge(book, "findings: [slant]\nexamined: [palm]\n"), "genetics") == "unsettled");
    CHECK(verdict(judge(book, "findings: [slant]\nexamined: [palm, look]\n"), "genetics") ==
          "not-suggested");
    CHECK(verdict(judge(book, "findings: [slant, fold]\nexamined: [palm]\n"), "genetics") ==
          "suggested");
}

TEST_CASE(
    "a present derived finding that is stated absent is judged present, "
    "with a caution") {
    auto const book = with_derived(derive("digit", "{ present: slant }"),
                                   rule("r", "{ present: digit }", "genetics", "routine"));
    auto const answer = judge(book, "findings: [slant]\nabsent: [digit]\n");
    CHECK(verdict(answer, "genetics") == "suggested");
    REQUIRE(answer.cautions.size() == 1);
    CHECK(answer.cautions.front().text.find("other findings imply it") != std::string::npos);
}

TEST_CASE("a derived finding may rest on age, sex and gestation") {
    auto const book = with_derived(derive("digit",
                                          "{ all: [{ age: { below: 24h } }, { sex: "
                                          "male }, { gestation: { below: "
                                          "37w0d } }] }"),
                                   rule("r", "{ present: digit }", "genetics", "routine"));
    std::string const all = "examined: all\nsex: male\nage: 3h\ngestation: 36w0d\n";
    CHECK(verdict(judge(book, all), "genetics") == "suggested");
    CHECK(verdict(judge(book, "examined: all\nsex: male\nage: 3h\n"), "genetics") == "unsettled");
    CHECK(verdict(judge(book, "examined: all\nsex: female\nage: 3h\n"), "genetics") ==
          "not-suggested");
}

TEST_CASE(
    "a ring of three derived findings, and one that rests on itself, are "
    "cycles") {
    CHECK(cycle_of(small_book_head + "derived:\n" + derive("slant", "{ present: fold }") +
                   derive("fold", "{ present: crease }") + derive("crease", "{ present: slant }") +
                   "rules: []\n")
              .message == "this derived finding depends on itself");
    cycle_of(small_book_head + "derived:\n" + derive("slant", "{ present: slant }") +
             "rules: []\n");
}

TEST_CASE(
    "a derived parent that rests on its own child is no cycle, the other "
    "way round is") {
    auto const loaded = load(small_book_head + "derived:\n" +
                             derive("lens", "{ present: cloudy }") + "rules: []\n");
    CHECK(loaded.book);
    cycle_of(small_book_head + "derived:\n" + derive("cloudy", "{ present: lens }") +
             "rules: []\n");
}

TEST_CASE("a tally on which its own member rests is a cycle") {
    cycle_of(small_book_head + "derived:\n" + derive("slant", "{ tally: minors, at-least: 2 }") +
             "rules: []\n");
}

TEST_CASE("a score that sums itself is a cycle") {
    auto text = small_book_head;
    text.insert(text.find("actions:"),
                "  - { tally: score, label: x, score: [{ "
                "item: a, when: { tally: score, at-least: "
                "1 } }] }\n");
    CHECK(cycle_of(text + "rules: []\n").message == "this tally depends on itself");
}

TEST_CASE("a finding is derived once, and only one that exists") {
    auto const twice = load(small_book_head + "derived:\n" + derive("slant", "{ present: fold }") +
                            derive("slant", "{ present: crease }") + "rules: []\n");
    CHECK(has_code(twice.diagnostics, "duplicate-id"));
    auto const unknown =
        load(small_book_head + "derived:\n" + derive("slent", "{ present: fold }") + "rules: []\n");
    REQUIRE(unknown.diagnostics.sorted().size() == 1);
    CHECK(unknown.diagnostics.sorted().front().help.find("did you mean `slant`") == 0);
}

TEST_CASE("a measure under `none` of a derivation is pointed at, wherever it stands") {
    auto const codes = [](std::string const& when) {
        auto const loaded =
            load(small_book_head + "derived:\n" + derive("slant", when) + "rules: []\n");
        REQUIRE(loaded.book);
        Diagnostics found;
        check_derivations(*loaded.book, found);
        return found.sorted().size();
    };
    std::string const wide = "{ measured: width, mm: { above: 10 } }";
    CHECK(codes(wide) == 0);
    CHECK(codes("{ none: [ " + wide + " ] }") == 1);
    CHECK(codes("{ all: [ { present: fold }, { none: [ { any: [ " + wide + ", " + wide +
                " ] } ] } ] }") == 2);
    CHECK(codes("{ none: [ { none: [ " + wide + " ] } ] }") == 0);
    CHECK(codes("{ none: [ { present: fold } ] }") == 0);
}
