// SPDX-License-Identifier: MIT
// Vignettes on constellations, tallies in halves, and splits that only together
// decide.
#include "review/rehearse.h"

#include "support/small_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

std::string const pattern =
    "constellations:\n  - constellation: pattern\n    "
    "label: pattern\n    for: genetics\n"
    "    items: [{ item: a, when: { present: slant }, "
    "points: 0.5 }, { item: b, when: { present: "
    "crease } }]\n    reached: { tally: pattern, "
    "at-least: 1.5 }\n    strength: study\n    "
    "sources: [s]\n";

std::vector<VignetteFailure> rehearsed(std::string const& baby_text, std::string const& expect) {
    auto const loaded = load(small_book_head + pattern +
                             "rules: []\nvignettes:\n  - { vignette: v, story: x., "
                             "case: { " +
                             baby_text + " }, expect: { " + expect + " }, sources: [s] }\n");
    for (auto const& diagnostic : loaded.diagnostics.sorted())
        MESSAGE(diagnostic.span.place(), ": ", diagnostic.message);
    REQUIRE(loaded.book);
    Diagnostics diagnostics;
    auto failures = rehearse(*loaded.book, diagnostics);
    CHECK(diagnostics.empty());
    return failures;
}

std::string message(std::string const& baby_text, std::string const& expect) {
    auto const failures = rehearsed(baby_text, expect);
    return failures.size() == 1 ? failures.front().message : std::to_string(failures.size());
}

}  // namespace

TEST_CASE("reached, missed and open, each expected as it is") {
    CHECK(rehearsed("examined: all, findings: [slant, crease]",
                    "constellations: { pattern: reached }")
              .empty());
    CHECK(rehearsed("examined: all, findings: [crease]", "constellations: { pattern: missed }")
              .empty());
    CHECK(rehearsed("findings: [crease]", "constellations: { pattern: open }").empty());
}

TEST_CASE("each of the three, expected otherwise") {
    CHECK(message("examined: all, findings: [slant, crease]",
                  "constellations: { pattern: missed }") ==
          "vignette `v`: pattern is reached, expected missed");
    CHECK(message("examined: all, findings: [crease]", "constellations: { pattern: open }") ==
          "vignette `v`: pattern is missed, expected open");
    CHECK(message("findings: [crease]", "constellations: { pattern: reached }") ==
          "vignette `v`: pattern is open, expected reached");
}

TEST_CASE("tallies are compared in tenths, by their lower bound") {
    CHECK(
        rehearsed("examined: all, findings: [slant, crease]", "tallies: { pattern: 1.5 }").empty());
    CHECK(message("examined: all, findings: [slant, crease]", "tallies: { pattern: 1 }") ==
          "vignette `v`: pattern is 1.5, expected 1");
    CHECK(rehearsed("findings: [slant]", "tallies: { pattern: 0.5, minors: 1 }").empty());
}

TEST_CASE("a failure stands at the word of the vignette that it speaks of") {
    auto const failures = rehearsed("findings: [crease]", "constellations: { pattern: reached }");
    REQUIRE(failures.size() == 1);
    auto const& place = failures.front().place;
    CHECK(place.source->text().substr(place.begin, 7) == "pattern");
    CHECK(failures.front().vignette == "v");
}

TEST_CASE("one vignette may fail in several ways; all are told") {
    CHECK(rehearsed("examined: all, findings: [slant, crease]",
                    "referrals: { genetics: suggested }, tallies: { minors: 9 }, "
                    "constellations: "
                    "{ pattern: open }")
              .size() == 3);
}
