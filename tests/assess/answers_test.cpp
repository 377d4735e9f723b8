// SPDX-License-Identifier: MIT
// The parts of an answer: reasons and their order, first steps, cautions, what
// is open, red flags.
#include "support/small_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

using Texts = std::vector<std::string>;

namespace {

Texts rules_of(Referral const& referral) {
    Texts rules;
    for (auto const& reason : referral.reasons) rules.push_back(reason.rule);
    return rules;
}

}  // namespace

TEST_CASE(
    "every rule that is true gives a reason, the most urgent first, else "
    "in book order") {
    auto const book = small_book(rule("b", "{ present: slant }", "genetics", "routine") +
                                 rule("a", "{ present: slant }", "genetics", "emergency") +
                                 rule("c", "{ present: slant }", "genetics", "routine") +
                                 rule("d", "{ present: fold }", "genetics", "emergency"));
    auto const answer = judge(book, "examined: all\nfindings: [slant]\n");
    CHECK(rules_of(referral(answer, "genetics")) == Texts{"a", "b", "c"});
    CHECK(referral(answer, "genetics").urgency == Urgency::emergency);
    CHECK(referral(answer, "genetics").reasons[1].urgency == Urgency::routine);
}

TEST_CASE("a rule may speak of several services, each at its urgency") {
    auto const loaded = load(small_book_head +
                             "rules:\n  - rule: r\n    when: { present: opaque }\n    suggest: "
                             "[{ service: "
                             "ophthalmology, urgency: same-day }, { service: genetics, urgency: "
                             "urgent }]\n    "
                             "because: x.\n    strength: guideline\n    sources: [s]\n");
    REQUIRE(loaded.book);
    auto const answer = judge(*loaded.book, "findings: [opaque]\n");
    CHECK(referral(answer, "ophthalmology").urgency == Urgency::same_day);
    CHECK(referral(answer, "genetics").urgency == Urgency::urgent);
    CHECK(answer.urgency == Urgency::same_day);
    CHECK(referral(answer, "genetics").reasons.front().strength == Strength::guideline);
}

TEST_CASE("referrals stand in the order of the book's services, one each") {
    auto const book = small_book("  []\n");
    auto const answer = judge(book, "{}\n");
    REQUIRE(answer.referrals.size() == 3);
    CHECK(answer.referrals[0].service == "genetics");
    CHECK(answer.referrals[1].service == "ophthalmology");
    CHECK(answer.referrals[2].service == "orthopaedics");
    for (auto const& one : answer.referrals) {
        CHECK(one.verdict == Verdict::not_suggested);
        CHECK_FALSE(one.urgency);
    }
    CHECK_FALSE(answer.urgency);
}

TEST_CASE("a first step that two rules name is told once, by the more urgent") {
    auto const book = small_book(rule("late", "{ present: slant }", "genetics", "routine",
                                      ", first-steps: [scan], caution: Late caution.") +
                                 rule("soon", "{ present: crease }", "genetics", "same-day",
                                      ", first-steps: [scan], caution: Soon caution."));
    auto const answer = judge(book, "examined: all\nfindings: [slant, crease]\n");
    REQUIRE(answer.first_steps.size() == 1);
    CHECK(answer.first_steps.front().second == "Scan the hips.");
    REQUIRE(answer.cautions.size() == 2);
    CHECK(answer.cautions.front().text == "Soon caution.");
}

TEST_CASE("steps, follow-up and cautions of rules that are not true are not told") {
    auto const book = small_book(rule("r", "{ present: slant }", "genetics", "routine",
                                      ", first-steps: [scan], follow-up: { action: scan, from: "
                                      "4w, to: 6w }, caution: C."));
    for (auto const* text : {"examined: all\n", "{}\n"}) {
        auto const answer = judge(book, text);
        CHECK(answer.first_steps.empty());
        CHECK(answer.follow_up.empty());
        CHECK(answer.cautions.empty());
    }
}

TEST_CASE("evidence: the decisive leaves only, in the words of the user") {
    auto const book = small_book(rule("r",
                                      "{ any: [{ all: [{ present: slant }, { present: fold }] "
                                      "}, { present: crease }] }",
                                      "genetics", "routine"));
    auto const answer = judge(book, "examined: all\nfindings: [Palm-CREASE, slant]\n");
    auto const& evidence = referral(answer, "genetics").reasons.front().evidence;
    REQUIRE(evidence.size() == 1);
    CHECK(evidence.front().id == "crease");
    CHECK(evidence.front().as_written == "Palm-CREASE");
    CHECK(evidence.front().key == "hands");
    CHECK(evidence.front().how == "stated");
}

TEST_CASE("a tally as evidence has its value, its threshold and what it counted") {
    auto const book =
        small_book(rule("two", "{ tally: minors, at-least: 2 }", "genetics", "urgent"));
    auto const answer =
        judge(book, "examined: all\nfindings: [{ finding: slant, side: left }, crease]\n");
    auto const& evidence = referral(answer, "genetics").reasons.front().evidence;
    Texts findings;
    bool counted = false;
    for (auto const& e : evidence) {
        if (e.kind == Evidence::Kind::finding) findings.push_back(e.id);
        if (e.kind != Evidence::Kind::tally) continue;
        counted = true;
        CHECK(e.value == "2");
        CHECK(e.threshold == "at least 2");
    }
    CHECK(counted);
    CHECK(findings.size() == 2);
    CHECK(std::find(findings.begin(), findings.end(), "slant") != findings.end());
}

TEST_CASE("findings: stated, inherited and unsure, with side and grade") {
    auto const book = small_book("  []\n");
    auto const answer = judge(book,
                              "findings: [opaque, { finding: digit, side: "
                              "both, grade: bony, familial: true }]\n"
                              "absent: [slant]\nunsure: [fold]\n");
    Texts lines;
    for (auto const& e : answer.findings)
        lines.push_back(e.id + " " + e.state + " " + e.how + (e.side.empty() ? "" : " " + e.side) +
                        (e.grade.empty() ? "" : " " + e.grade) + (e.familial ? " familial" : ""));
    CHECK(std::find(lines.begin(), lines.end(), "opaque present stated") != lines.end());
    CHECK(std::find(lines.begin(), lines.end(), "cloudy present inherited") != lines.end());
    CHECK(std::find(lines.begin(), lines.end(), "lens present inherited") != lines.end());
    CHECK(std::find(lines.begin(), lines.end(), "digit present stated both bony familial") !=
          lines.end());
    CHECK(std::find(lines.begin(), lines.end(), "slant absent stated") != lines.end());
    CHECK(std::find(lines.begin(), lines.end(), "fold unknown unsure") != lines.end());
}

TEST_CASE("not examined: essential steps first, history and facts apart") {
    auto const book = small_book(rule("r", "{ present: breech }", "orthopaedics", "routine") +
                                 rule("s", "{ present: slant }", "genetics", "routine"));
    auto const open = judge(book, "{}\n").not_examined;
    REQUIRE(open.steps.size() == 3);
    CHECK(open.steps.front().step == "reflex");
    CHECK(open.steps.front().essential);
    CHECK(open.history == Texts{"breech"});
    CHECK(open.facts == Texts{"sex", "gestation", "age"});
    auto const done = judge(book,
                            "examined: all\nhistory: none\nsex: "
                            "male\ngestation: 39w0d\nage: 1d\n")
                          .not_examined;
    CHECK(done.steps.empty());
    CHECK(done.history.empty());
    CHECK(done.facts.empty());
}

TEST_CASE(
    "settled by: essential steps first, then by the number of rules that "
    "hang on them") {
    auto const book = small_book(rule("a", "{ present: slant }", "genetics", "routine") +
                                 rule("b", "{ present: fold }", "genetics", "routine") +
                                 rule("c", "{ present: crease }", "genetics", "routine") +
                                 rule("d", "{ present: opaque }", "genetics", "routine"));
    auto const open = referral(judge(book, "{}\n"), "genetics");
    REQUIRE(open.settled_by.size() == 3);
    CHECK(open.settled_by[0].step == "reflex");
    CHECK(open.settled_by[1].step == "look");
    CHECK(open.settled_by[1].rules == 2);
    CHECK(open.settled_by[1].findings == 2);
    CHECK(open.settled_by[2].step == "palm");
}

TEST_CASE("an unsettled verdict waits for facts that nobody examines") {
    auto const book = small_book(rule("r",
                                      "{ all: [{ present: slant }, { sex: female }, { age: { "
                                      "below: 24h } }] }",
                                      "genetics", "routine"));
    auto const open = referral(judge(book, "findings: [slant]\n"), "genetics");
    CHECK(open.verdict == Verdict::unsettled);
    CHECK(open.if_rest_normal == Verdict::unsettled);
    CHECK(open.open_facts == Texts{"age", "sex"});
    CHECK(open.settled_by.empty());
}

TEST_CASE("if the rest were normal a measure not taken is past no cut-off") {
    auto const book =
        small_book(rule("r", "{ all: [{ present: slant }, { measured: width, mm: { above: 5 } }] }",
                        "genetics", "routine"));
    auto const open = referral(judge(book, "findings: [slant]\n"), "genetics");
    CHECK(open.verdict == Verdict::unsettled);
    CHECK(open.if_rest_normal == Verdict::not_suggested);
}

TEST_CASE("if the rest were normal, an absence that a rule asks for holds") {
    auto const book = small_book(
        rule("r", "{ all: [{ present: slant }, { absent: crease }] }", "genetics", "routine"));
    auto const open = referral(judge(book, "findings: [slant]\n"), "genetics");
    CHECK(open.verdict == Verdict::unsettled);
    CHECK(open.if_rest_normal == Verdict::suggested);
}

TEST_CASE("red flags are recognised by child and by derivation, and only those") {
    auto const book = small_book("  []\n");
    Diagnostics diagnostics;
    auto const one = read_case(
        make_source("case.yaml", "findings: [opaque, slant, palmer creese]\nsex: neither\n"),
        *book.ontology, diagnostics);
    CHECK(diagnostics.has_errors());
    auto const flags = recognised_red_flags(book, one);
    REQUIRE(flags.size() == 1);
    CHECK(flags.front().id == "opaque");
    CHECK(flags.front().as_written == "opaque");
    Diagnostics none;
    auto const harmless =
        read_case(make_source("case.yaml", "findings: [slant, crese]\n"), *book.ontology, none);
    CHECK(recognised_red_flags(book, harmless).empty());
}

TEST_CASE("a red flag that is stated absent or unsure is not recognised as present") {
    auto const book = small_book("  []\n");
    for (auto const* text : {"absent: [opaque]\n", "unsure: [opaque]\n", "examined: all\n"}) {
        CAPTURE(text);
        CHECK(recognised_red_flags(book, baby(book, text)).empty());
    }
}

TEST_CASE("an answer knows the case's code and whether anything was examined") {
    auto const book = small_book("  []\n");
    CHECK(judge(book, "case: demo-7\n").case_id == "demo-7");
    CHECK(judge(book, "findings: [slant]\n").nothing_examined);
    CHECK_FALSE(judge(book, "examined: [look]\n").nothing_examined);
}
