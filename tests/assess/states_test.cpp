// SPDX-License-Identifier: MIT
// Present, absent, not examined: what a case makes of each finding.
#include "support/small_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

CompiledRulebook const& lens_book() {
    static CompiledRulebook const book =
        small_book(rule("r", "{ present: lens }", "ophthalmology", "urgent"));
    return book;
}

std::string lens(std::string const& text) {
    return verdict(judge(lens_book(), text), "ophthalmology");
}

}  // namespace

TEST_CASE("not examined is never read as normal") {
    CHECK(lens("{}\n") == "unsettled");
    CHECK(lens("findings: [nubbin]\n") == "unsettled");
}

TEST_CASE("a parent reads absent by implication only when every descendant's step is done") {
    CHECK(lens("examined: [look]\n") == "unsettled");
    CHECK(lens("examined: [look, reflex]\n") == "not-suggested");
    CHECK(lens("examined: all\n") == "not-suggested");
    CHECK(lens("examined: [all, except: [reflex]]\n") == "unsettled");
}

TEST_CASE("an explicitly absent parent makes its children absent") {
    auto const book = small_book(rule("r", "{ present: opaque }", "ophthalmology", "urgent"));
    CHECK(verdict(judge(book, "absent: [lens]\n"), "ophthalmology") == "not-suggested");
    CHECK(verdict(judge(book, "absent: [slant]\n"), "ophthalmology") == "unsettled");
}

TEST_CASE("a present child makes its ancestors present") {
    CHECK(lens("findings: [opaque]\n") == "suggested");
    auto const result = judge(lens_book(), "findings: [opaque]\n");
    CHECK(referral(result, "ophthalmology").reasons.front().evidence.front().id == "opaque");
}

TEST_CASE("unsure counts as not examined although its step is done, and is listed") {
    auto const result = judge(lens_book(), "examined: all\nunsure: [cloudy]\n");
    CHECK(verdict(result, "ophthalmology") == "unsettled");
    REQUIRE(result.not_examined.unsure.size() == 1);
    CHECK(result.not_examined.unsure.front().id == "cloudy");
}

TEST_CASE("implied absence yields to stated presence") {
    CHECK(lens("examined: all\nfindings: [cloudy]\n") == "suggested");
}

TEST_CASE("an unrecorded history item gates a rule only where the rule marks it essential") {
    auto const open = small_book(rule("r", "{ present: breech }", "orthopaedics", "routine"));
    CHECK(verdict(judge(open, "examined: all\n"), "orthopaedics") == "not-suggested");
    auto const essential = small_book(
        rule("r", "{ present: breech }", "orthopaedics", "routine", ", essential: [breech]"));
    CHECK(verdict(judge(essential, "examined: all\n"), "orthopaedics") == "unsettled");
    CHECK(verdict(judge(essential, "examined: all\nhistory: none\n"), "orthopaedics") ==
          "not-suggested");
    CHECK(verdict(judge(essential, "examined: all\nhistory: [breech]\n"), "orthopaedics") ==
          "suggested");
}

TEST_CASE("an unrecorded history item that would change the answer is an open question") {
    auto const book = small_book(rule("r", "{ present: breech }", "orthopaedics", "routine"));
    CHECK(judge(book, "examined: all\n").not_examined.history ==
          std::vector<std::string>{"breech"});
    CHECK(judge(book, "examined: all\nhistory: none\n").not_examined.history.empty());
}

TEST_CASE("the result of a test is not part of `examined: all` and leaves no rule open") {
    auto const book = small_book(rule("r", "{ present: hole }", "genetics", "routine"));
    CHECK(verdict(judge(book, "{}\n"), "genetics") == "not-suggested");
    CHECK(verdict(judge(book, "findings: [hole]\n"), "genetics") == "suggested");
    auto const result = judge(book, "examined: all\n");
    for (auto const& step : result.not_examined.steps) CHECK(step.step != "echo");
}

TEST_CASE(
    "a finding of the other sex reads absent; stating one is a caution and is judged as stated") {
    auto const book = small_book(rule("r", "{ present: testis }", "genetics", "routine"));
    CHECK(verdict(judge(book, "sex: female\n"), "genetics") == "not-suggested");
    CHECK(verdict(judge(book, "sex: undetermined\n"), "genetics") == "unsettled");
    auto const stated = judge(book, "sex: female\nfindings: [testis]\n");
    CHECK(verdict(stated, "genetics") == "suggested");
    CHECK(stated.cautions.size() == 1);
}

TEST_CASE("sex, age and gestation that are not given are unknown") {
    auto const sexed = small_book(rule("r", "{ sex: female }", "genetics", "routine"));
    CHECK(verdict(judge(sexed, "{}\n"), "genetics") == "unsettled");
    CHECK(verdict(judge(sexed, "sex: undetermined\n"), "genetics") == "unsettled");
    CHECK(verdict(judge(sexed, "sex: male\n"), "genetics") == "not-suggested");
    auto const aged = small_book(rule("r", "{ age: { below: 24h } }", "genetics", "routine"));
    CHECK(verdict(judge(aged, "{}\n"), "genetics") == "unsettled");
    CHECK(verdict(judge(aged, "age: 23h\n"), "genetics") == "suggested");
    CHECK(verdict(judge(aged, "age: 1d\n"), "genetics") == "not-suggested");
    auto const born =
        small_book(rule("r", "{ gestation: { below: 37w0d } }", "genetics", "routine"));
    CHECK(verdict(judge(born, "gestation: 36w6d\n"), "genetics") == "suggested");
    CHECK(verdict(judge(born, "gestation: 37w0d\n"), "genetics") == "not-suggested");
    CHECK(verdict(judge(born, "gestation: 36w\n"), "genetics") == "suggested");
}

TEST_CASE("sides: left, right, both, one only") {
    auto const of = [](std::string const& side) {
        return small_book(
            rule("r", "{ present: crease, side: " + side + " }", "genetics", "routine"));
    };
    auto const left = of("left"), both = of("both"), one = of("one");
    std::string const on_left = "findings: [{ finding: crease, side: left }]\n";
    std::string const on_both = "findings: [{ finding: crease, side: both }]\n";
    CHECK(verdict(judge(left, on_left), "genetics") == "suggested");
    CHECK(verdict(judge(both, on_left), "genetics") == "unsettled");
    CHECK(verdict(judge(both, on_left + "examined: all\n"), "genetics") == "not-suggested");
    CHECK(verdict(judge(both, on_both), "genetics") == "suggested");
    CHECK(verdict(judge(one, on_left + "examined: all\n"), "genetics") == "suggested");
    CHECK(verdict(judge(one, on_both), "genetics") == "not-suggested");
    CHECK(verdict(judge(left, "findings: [crease]\nexamined: all\n"), "genetics") == "unsettled");
    CHECK(
        verdict(
            judge(
                both,
                "findings: [{ finding: crease, side: left }, { finding: crease, side: right }]\n"),
            "genetics") == "suggested");
}

TEST_CASE("a grade that is not stated is unknown, also if the rest were normal") {
    auto const book =
        small_book(rule("r", "{ present: digit, grade: bony }", "genetics", "routine"));
    CHECK(verdict(judge(book, "findings: [{ finding: digit, grade: bony }]\n"), "genetics") ==
          "suggested");
    CHECK(verdict(judge(book, "findings: [{ finding: digit, grade: tag }]\n"), "genetics") ==
          "not-suggested");
    auto const open = judge(book, "findings: [digit]\nexamined: all\n");
    CHECK(verdict(open, "genetics") == "unsettled");
    CHECK(referral(open, "genetics").if_rest_normal == Verdict::unsettled);
    CHECK(referral(open, "genetics").open_facts ==
          std::vector<std::string>{"grade of extra digit"});
}
