// SPDX-License-Identifier: MIT
// Counting keys, bounds, familial discount.
#include "support/small_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

CompiledRulebook const& book() {
    static CompiledRulebook const loaded =
        small_book(rule("two", "{ tally: minors, at-least: 2 }", "genetics", "urgent") +
                   rule("flag", "{ present: opaque }", "ophthalmology", "same-day"));
    return loaded;
}

std::string minors(std::string const& text) { return bounds(judge(book(), text), "minors"); }
std::string majors(std::string const& text) { return bounds(judge(book(), text), "majors"); }

}  // namespace

TEST_CASE("a key counts once, whatever the number of findings and sides") {
    CHECK(minors("examined: all\nfindings: [slant]\n") == "1..1");
    CHECK(minors("examined: all\nfindings: [slant, fold]\n") == "1..1");
    CHECK(minors("examined: all\nfindings: [{ finding: crease, side: both }]\n") == "1..1");
    CHECK(minors("examined: all\nfindings: [slant, crease]\n") == "2..2");
}

TEST_CASE("a count has a lower bound (present) and an upper bound (present and not examined)") {
    CHECK(minors("findings: [crease]\n") == "1..3");
    CHECK(minors("findings: [crease]\nsex: female\n") == "1..2");
    CHECK(minors("findings: [crease]\nexamined: [look]\nsex: female\n") == "1..1");
}

TEST_CASE("a parent and a child count once; only the most specific is counted") {
    CHECK(majors("examined: all\nfindings: [cloudy, opaque]\n") == "1..1");
    auto const result = judge(book(), "examined: all\nfindings: [opaque]\n");
    REQUIRE(tally(result, "majors").counted.size() >= 1);
    CHECK(tally(result, "majors").counted.back().id == "opaque");
}

TEST_CASE(
    "familial keys are set aside and named; a key is familial only if all its present members "
    "are") {
    auto const one =
        judge(book(), "examined: all\nfindings: [{ finding: slant, familial: true }, crease]\n");
    CHECK(bounds(one, "minors") == "1..1");
    REQUIRE(one.set_aside.size() == 1);
    CHECK(one.set_aside.front().finding == "slant");
    CHECK(one.set_aside.front().why == "familial");
    CHECK(minors("examined: all\nfindings: [{ finding: slant, familial: true }, fold]\n") ==
          "1..1");
    CHECK(minors("examined: all\nfindings: [{ finding: slant, familial: true }, { finding: fold, "
                 "familial: true }]\n") == "0..0");
}

TEST_CASE("familial is recorded on a major anomaly and changes nothing") {
    CHECK(majors("examined: all\nfindings: [{ finding: digit, familial: true }]\n") == "1..1");
    auto const result =
        judge(book(), "examined: all\nfindings: [{ finding: opaque, familial: true }]\n");
    CHECK(verdict(result, "ophthalmology") == "suggested");
}

TEST_CASE("a minor variant in the field of a counted major is not counted") {
    auto const result = judge(book(), "examined: all\nfindings: [slant, cloudy]\n");
    CHECK(bounds(result, "minors") == "0..0");
    CHECK(bounds(result, "majors") == "1..1");
    REQUIRE(result.set_aside.size() == 1);
    CHECK(result.set_aside.front().why == "in the field of a major anomaly that is counted");
}

TEST_CASE("normal variants never count") {
    CHECK(minors("examined: all\nfindings: [nubbin]\n") == "0..0");
    auto const result = judge(book(), "examined: all\nfindings: [nubbin]\n");
    CHECK(result.set_aside.front().why == "normal variant");
}

TEST_CASE("a tally settles as soon as no further finding can change it") {
    CHECK(verdict(judge(book(), "findings: [slant, crease]\n"), "genetics") == "unsettled");
    CHECK(verdict(judge(book(), "findings: [slant, crease]\nexamined: [look, reflex]\n"),
                  "genetics") == "suggested");
    CHECK(verdict(judge(book(), "findings: [crease]\nexamined: all\n"), "genetics") ==
          "not-suggested");
}

TEST_CASE("a suggestion that holds whichever way an open split falls is settled") {
    // The lens may still turn out cloudy and then takes the place of the slanting eyes: either way
    // genetics is reached.
    auto const split = small_book(
        rule("two", "{ tally: minors, at-least: 2 }", "genetics", "urgent") +
        rule("mixed", "{ all: [{ tally: minors, at-least: 1 }, { tally: majors, at-least: 1 }] }",
             "genetics", "same-day"));
    auto const result = judge(split, "findings: [slant, crease]\n");
    CHECK(verdict(result, "genetics") == "suggested");
    CHECK(referral(result, "genetics").urgency == Urgency::urgent);
    CHECK(referral(result, "genetics").may_rise_to == Urgency::same_day);
    REQUIRE_FALSE(referral(result, "genetics").reasons.empty());
    CHECK(referral(result, "genetics").reasons.front().rule == "two");
}

TEST_CASE("scores add points in tenths, with a bound either way") {
    auto const loaded =
        load(small_book_head +
             "constellations:\n"
             "  - constellation: pattern\n    label: pattern\n    for: genetics\n"
             "    items: [{ item: a, when: { present: slant }, points: 0.5 }, { item: b, when: { "
             "present: crease }, points: 1.5 }]\n"
             "    reached: { tally: pattern, at-least: 2 }\n    strength: study\n    sources: [s]\n"
             "rules:\n" +
             rule("r", "{ constellation: pattern }", "genetics", "routine"));
    REQUIRE(loaded.book);
    auto const half = judge(*loaded.book, "examined: all\nfindings: [crease]\n");
    CHECK(verdict(half, "genetics") == "not-suggested");
    REQUIRE(half.constellations.size() == 1);
    CHECK(half.constellations.front().low == "1.5");
    CHECK(half.constellations.front().possible == "2");
    CHECK(verdict(judge(*loaded.book, "examined: all\nfindings: [crease, slant]\n"), "genetics") ==
          "suggested");
    CHECK(verdict(judge(*loaded.book, "findings: [crease]\n"), "genetics") == "unsettled");
}
