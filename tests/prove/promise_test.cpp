// SPDX-License-Identifier: MIT
// How promises are written, what is refused, and what each form means on a small book.
#include "review/prove.h"

#include "support/small_book.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

std::string const rules =
    "rules:\n" + rule("lens", "{ present: opaque }", "ophthalmology", "same-day") +
    rule("three", "{ tally: minors, at-least: 3 }", "genetics", "urgent") +
    rule("slow", "{ present: digit, grade: bony }", "orthopaedics", "routine") +
    rule("calm", "{ all: [ { present: nubbin }, { absent: slant } ] }", "genetics", "urgent");

std::string promise(std::string const& parts) {
    return "promises:\n  - { promise: p, " + parts + ", because: x, sources: [s] }\n";
}

Proof decided(std::string const& parts, sat::Limits const& limits = {}) {
    auto loaded = load(small_book_head + rules + promise(parts));
    REQUIRE(loaded.book);
    auto const promises = compile_promises(*loaded.book, loaded.diagnostics);
    for (auto const& d : loaded.diagnostics.sorted()) MESSAGE(d.span.place(), ": ", d.message);
    REQUIRE(promises);
    return prove(*promises, promises->all.front(), limits);
}

std::string result(std::string const& parts) { return std::string(to_text(decided(parts).result)); }

/// Codes of what is wrong with a promise.
std::vector<std::string> refused(std::string const& parts) {
    auto loaded = load(small_book_head + rules + promise(parts));
    if (loaded.book) CHECK_FALSE(compile_promises(*loaded.book, loaded.diagnostics));
    return codes(loaded.diagnostics);
}

using Codes = std::vector<std::string>;

}  // namespace

TEST_CASE("suggest, never, holds and never-met") {
    CHECK(
        result("when: { present: opaque }, then: { suggest: ophthalmology, at-least: same-day }") ==
        "holds");
    CHECK(result(
              "when: { present: opaque }, then: { suggest: ophthalmology, at-least: emergency }") ==
          "broken");
    CHECK(result("when: { present: opaque }, then: { suggest: [genetics, ophthalmology] }") ==
          "holds");
    CHECK(result("when: { present: cloudy }, then: { suggest: any }") == "broken");
    CHECK(result("then: { never: any, at-least: emergency }") == "holds");
    CHECK(result("then: { never: ophthalmology }") == "broken");
    CHECK(result("when: { present: opaque }, then: { holds: { present: lens } }") == "holds");
    CHECK(result("when: { present: lens }, then: { holds: { present: cloudy } }") == "broken");
    CHECK(result("when: { tally: minors, at-most: 1 }, then: { never-met: { tally: minors, "
                 "at-least: 2 } }") == "holds");
    CHECK(result("then: [ { never: any, at-least: emergency }, { never: genetics } ]") == "broken");
}

TEST_CASE("for each finding of a class, alone, in the family") {
    CHECK(result("for-each: red-flag, then: { suggest: any, at-least: same-day }") == "holds");
    CHECK(result("for-each: major-anomaly, then: { suggest: any }") == "broken");
    CHECK(result("for-each: minor-variant, alone: true, then: { never: any }") == "holds");
    CHECK(result("for-each: minor-variant, then: { never: any }") == "broken");
    CHECK(result("for-each: minor-variant, alone: true, familial: true, then: { never-met: { "
                 "tally: minors, at-least: 1 } }") == "holds");
    CHECK(result("for-each: minor-variant, alone: true, then: { never-met: { tally: minors, "
                 "at-least: 1 } }") == "broken");
    CHECK(decided("for-each: major-anomaly, except: [cloudy, hole], then: { suggest: any }")
              .finding == "digit");
}

TEST_CASE("adding a finding: nothing falls, or a case shows what does") {
    CHECK(result("adding: red-flag, then: { keeps: urgency }") == "holds");
    auto const proof = decided("adding: minor-variant, then: { keeps: services }");
    CHECK(proof.result == ProofResult::broken);
    CHECK(proof.finding == "slant");
    CHECK(proof.said == "genetics falls from urgent to no suggestion");
}

TEST_CASE("a counterexample is small, and is read back and judged the same") {
    auto const proof = decided("when: { present: slant }, then: { suggest: genetics }");
    CHECK(proof.case_text == "case: breaks-p\nfindings:\n  - slant\n");
    CHECK(proof.said == "genetics unsettled");
}

TEST_CASE("without time a promise is not proven") {
    auto const proof =
        decided("then: { never: any, at-least: emergency }", {1, std::chrono::milliseconds(0)});
    CHECK(proof.result == ProofResult::not_proven);
    CHECK(proof.why_not == "the limit was reached");
}

TEST_CASE("what cannot be meant is refused") {
    CHECK(refused("then: { suggest: geneticks }") == Codes{"unknown-service"});
    CHECK(refused("then: { suggest: genetics, never: any }") == Codes{"one-of"});
    CHECK(refused("then: {}") == Codes{"one-of"});
    CHECK(refused("then: []") == Codes{"bad-promise"});
    CHECK(refused("then: { holds: { present: slant }, at-least: urgent }") ==
          Codes{"needless-key"});
    CHECK(refused("alone: true, then: { never: any }") == Codes{"bad-promise"});
    CHECK(refused("for-each: red-flag, adding: red-flag, then: { keeps: urgency }") ==
          Codes{"bad-promise"});
    CHECK(refused("then: { keeps: urgency }") == Codes{"bad-promise"});
    CHECK(refused("adding: red-flag, then: { suggest: genetics }") == Codes{"bad-promise"});
    CHECK(refused("for-each: red-flag, except: slant, then: { suggest: any }") ==
          Codes{"bad-promise"});
    CHECK(refused("when: { present: slannt }, then: { suggest: any }") == Codes{"unknown-finding"});
}
