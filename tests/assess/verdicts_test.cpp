// SPDX-License-Identifier: MIT
// Verdicts, urgencies, reasons, what the answer hangs on.
#include "support/small_book.h"
#include "testing.h"

#include "assess/changes.h"

using namespace asterism;
using namespace asterism::testing;

TEST_CASE("the highest urgency wins, and an open rule says what it may rise to") {
    auto const book = small_book(rule("low", "{ present: crease }", "genetics", "routine") +
                                 rule("mid", "{ present: digit }", "genetics", "urgent") +
                                 rule("high", "{ present: opaque }", "genetics", "emergency"));
    auto const result = judge(book, "findings: [crease, digit]\n");
    CHECK(referral(result, "genetics").urgency == Urgency::urgent);
    CHECK(referral(result, "genetics").may_rise_to == Urgency::emergency);
    CHECK(result.urgency == Urgency::urgent);
    CHECK(referral(result, "genetics").reasons.front().rule == "mid");
    auto const settled = judge(book, "findings: [crease, digit]\nexamined: all\n");
    CHECK_FALSE(referral(settled, "genetics").may_rise_to);
}

TEST_CASE(
    "an unsettled verdict says what it would be if the rest were normal, and which step would "
    "tell") {
    auto const book = small_book(rule("flag", "{ present: opaque }", "ophthalmology", "same-day"));
    auto const result = judge(book, "examined: [look]\n");
    auto const& eyes = referral(result, "ophthalmology");
    CHECK(eyes.verdict == Verdict::unsettled);
    CHECK(eyes.if_rest_normal == Verdict::not_suggested);
    REQUIRE(eyes.settled_by.size() == 1);
    CHECK(eyes.settled_by.front().step == "reflex");
    CHECK(eyes.settled_by.front().essential);
    CHECK_FALSE(referral(judge(book, "examined: all\n"), "ophthalmology").if_rest_normal);
}

TEST_CASE("a suggestion carries its rule, sentence, place, sources and the user's own words") {
    auto const book = small_book(rule("flag", "{ any: [{ present: opaque }, { present: digit }] }",
                                      "ophthalmology", "same-day"));
    auto const result = judge(book, "findings: [Opaque LENS]\n");
    auto const& reason = referral(result, "ophthalmology").reasons.front();
    CHECK(reason.rule == "flag");
    CHECK(reason.text == "Because flag.");
    CHECK(reason.sources == std::vector<std::string>{"s"});
    CHECK(reason.place.starts_with("book.yaml:"));
    REQUIRE(reason.evidence.size() == 1);
    CHECK(reason.evidence.front().as_written == "Opaque LENS");
    CHECK(reason.evidence.front().finding_class == FindingClass::red_flag);
}

TEST_CASE("not suggested names what the nearest rule lacked") {
    auto const book =
        small_book(rule("three", "{ tally: minors, at-least: 2 }", "genetics", "urgent") +
                   rule("other", "{ present: opaque }", "genetics", "urgent"));
    auto const result = judge(book, "examined: all\nfindings: [crease]\n");
    auto const& reason = referral(result, "genetics").reasons.front();
    CHECK(reason.rule == "three");
    CHECK(reason.lacks == std::vector<std::string>{"minor variants: 1 of 2"});
    CHECK(reason.evidence.front().id == "crease");
    CHECK(referral(judge(book, "examined: all\n"), "genetics").reasons.empty());
}

TEST_CASE("conditions: all, any, none, at-least, absent, at-most") {
    auto const reaches = [](std::string const& when, std::string const& text) {
        return verdict(judge(small_book(rule("r", when, "genetics", "routine")), text), "genetics");
    };
    CHECK(reaches("{ all: [{ present: slant }, { present: fold }] }", "findings: [slant]\n") ==
          "unsettled");
    CHECK(reaches("{ all: [{ present: slant }, { present: fold }] }",
                  "findings: [slant]\nabsent: [fold]\n") == "not-suggested");
    CHECK(reaches("{ any: [{ present: slant }, { present: fold }] }", "findings: [slant]\n") ==
          "suggested");
    CHECK(reaches("{ none: [{ present: slant }, { present: fold }] }", "absent: [slant, fold]\n") ==
          "suggested");
    CHECK(reaches("{ none: [{ present: slant }] }", "findings: [slant]\n") == "not-suggested");
    CHECK(
        reaches("{ at-least: 2, of: [{ present: slant }, { present: fold }, { present: crease }] }",
                "findings: [slant, crease]\n") == "suggested");
    CHECK(
        reaches("{ at-least: 2, of: [{ present: slant }, { present: fold }, { present: crease }] }",
                "findings: [slant]\nabsent: [fold, crease]\n") == "not-suggested");
    CHECK(reaches("{ absent: slant }", "examined: all\n") == "suggested");
    CHECK(reaches("{ tally: minors, at-most: 1 }", "examined: all\nfindings: [crease]\n") ==
          "suggested");
    CHECK(reaches("{ tally: minors, at-most: 1 }", "examined: all\nfindings: [crease, slant]\n") ==
          "not-suggested");
}

TEST_CASE(
    "measures in their own unit, with half a division either way for a ruler and none for a "
    "counter") {
    auto const wide =
        small_book(rule("r", "{ measured: width, mm: { above: 5 } }", "genetics", "routine"));
    CHECK(verdict(judge(wide, "measures: { width: 7 mm }\n"), "genetics") == "suggested");
    CHECK(verdict(judge(wide, "measures: { width: 0.4 cm }\n"), "genetics") == "not-suggested");
    CHECK(verdict(judge(wide, "measures: { width: 5 mm }\n"), "genetics") == "unsettled");
    CHECK(verdict(judge(wide, "{}\n"), "genetics") == "unsettled");
    auto const fast =
        small_book(rule("r", "{ measured: rate, /min: { at-least: 60 } }", "genetics", "routine"));
    CHECK(verdict(judge(fast, "measures: { rate: 60 /min }\n"), "genetics") == "suggested");
    CHECK(verdict(judge(fast, "measures: { rate: 59 /min }\n"), "genetics") == "not-suggested");
}

TEST_CASE(
    "a derived finding: the measure decides, a statement against it is a caution, without it the "
    "eye does") {
    auto const loaded = load(small_book_head +
                             "derived:\n  - { derive: digit, when: { measured: width, mm: { above: "
                             "5 } }, because: x., sources: [s] }\nrules:\n" +
                             rule("r", "{ present: digit }", "genetics", "routine"));
    REQUIRE(loaded.book);
    auto const& book = *loaded.book;
    CHECK(verdict(judge(book, "measures: { width: 9 mm }\n"), "genetics") == "suggested");
    CHECK(verdict(judge(book, "measures: { width: 2 mm }\n"), "genetics") == "not-suggested");
    CHECK(verdict(judge(book, "examined: all\n"), "genetics") == "not-suggested");
    CHECK(verdict(judge(book, "{}\n"), "genetics") == "unsettled");
    auto const against = judge(book, "measures: { width: 2 mm }\nfindings: [digit]\n");
    CHECK(verdict(against, "genetics") == "suggested");
    REQUIRE(against.cautions.size() == 1);
    CHECK(against.cautions.front().places.size() == 2);
    auto const borderline = judge(book, "measures: { width: 5 mm }\nexamined: all\n");
    CHECK(verdict(borderline, "genetics") == "unsettled");
    CHECK(borderline.cautions.size() == 1);
    auto const by_eye = judge(book, "findings: [digit]\n");
    CHECK(by_eye.cautions.front().text.find("by eye") != std::string::npos);
}

TEST_CASE("at a red-flag cut-off the unsafe side wins, marked borderline") {
    auto const loaded = load(small_book_head +
                             "derived:\n  - { derive: opaque, when: { measured: width, mm: { "
                             "above: 5 } }, because: x., sources: [s] }\nrules:\n" +
                             rule("r", "{ present: opaque }", "genetics", "routine"));
    REQUIRE(loaded.book);
    auto const result = judge(*loaded.book, "measures: { width: 5 mm }\n");
    CHECK(verdict(result, "genetics") == "suggested");
    REQUIRE(result.cautions.size() == 1);
    CHECK(result.cautions.front().text.find("unsafe side") != std::string::npos);
}

TEST_CASE("follow-up windows become dates when the birth date is known") {
    auto const book = small_book(rule("r", "{ present: breech }", "orthopaedics", "routine",
                                      ", follow-up: { action: scan, from: 4w, to: 6w }"));
    auto const result = judge(book, "born: 2031-04-02\nhistory: [breech]\n");
    REQUIRE(result.follow_up.size() == 1);
    CHECK(to_text(*result.follow_up.front().from_date) == "2031-04-30");
    CHECK(to_text(*result.follow_up.front().to_date) == "2031-05-14");
    CHECK_FALSE(judge(book, "history: [breech]\n").follow_up.front().from_date);
}

TEST_CASE("what would change the answer") {
    auto const book =
        small_book(rule("two", "{ tally: minors, at-least: 2 }", "genetics", "urgent") +
                   rule("flag", "{ present: opaque }", "ophthalmology", "same-day"));
    auto const text = std::string("examined: all\nsex: female\nfindings: [slant, crease]\n");
    auto result = judge(book, text);
    add_what_would_change(book, baby(book, text), result);
    auto const& change = referral(result, "genetics").what_would_change;
    REQUIRE(change.without.size() == 2);
    CHECK(change.without[0].front().id == "slant");
    CHECK(change.without[1].front().id == "crease");
    CHECK(referral(result, "ophthalmology").what_would_change.alone == 1);

    auto const open = std::string("sex: female\nfindings: [crease]\nexamined: [palm, look]\n");
    auto unsettled = judge(book, open);
    add_what_would_change(book, baby(book, open), unsettled);
    auto const& examine = referral(unsettled, "ophthalmology").what_would_change.examine;
    REQUIRE(examine.size() == 1);
    CHECK(examine.front().step == "reflex");
    auto const whole = std::string("sex: female\nfindings: [crease]\nexamined: all\n");
    auto settled = judge(book, whole);
    add_what_would_change(book, baby(book, whole), settled);
    auto const& with = referral(settled, "genetics").what_would_change.with;
    REQUIRE_FALSE(with.empty());
    CHECK((with.front().front().id == "slant" || with.front().front().id == "fold"));
}

TEST_CASE("the same input gives the same answer") {
    auto const book =
        small_book(rule("r", "{ tally: minors, at-least: 2 }", "genetics", "routine"));
    auto const a = judge(book, "findings: [slant, crease]\n");
    auto const b = judge(book, "findings: [slant, crease]\n");
    CHECK(a.rulebook.digest == b.rulebook.digest);
    CHECK(a.referrals.size() == b.referrals.size());
    CHECK(verdict(a, "genetics") == verdict(b, "genetics"));
}

TEST_CASE("a trace shows every condition with the value seen, also of a rule that did not fire") {
    auto const book = small_book(
        rule("r", "{ all: [{ present: slant }, { present: opaque }] }", "genetics", "routine"));
    auto const lines = trace(book, baby(book, "findings: [slant]\n"), "r");
    REQUIRE(lines.size() == 3);
    CHECK(lines[0].value == Truth::unknown);
    CHECK(lines[1].seen == "stated present: slant");
    CHECK(lines[2].seen == "not examined");
    CHECK(trace(book, baby(book, "{}\n"), "no-such-rule").empty());
}
