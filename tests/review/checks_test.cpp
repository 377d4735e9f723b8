// SPDX-License-Identifier: MIT
// What `check` finds in a book that loads: silent flags, uncited sources,
// unclassed findings, rules without a vignette; and what it counts.
#include "review/check.h"

#include <algorithm>

#include "review/vignette.h"
#include "support/small_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

std::vector<Diagnostic> problems(CompiledRulebook const& book, std::string const& code) {
    Diagnostics diagnostics;
    check_book(book, diagnostics);
    std::vector<Diagnostic> found;
    for (auto const& diagnostic : diagnostics.sorted())
        if (diagnostic.code == code) found.push_back(diagnostic);
    return found;
}

CompiledRulebook book_of(std::string const& text, std::string const& ontology = small_ontology) {
    auto loaded = load(text, ontology);
    for (auto const& diagnostic : loaded.diagnostics.sorted())
        MESSAGE(diagnostic.span.place(), ": ", diagnostic.message);
    REQUIRE(loaded.book);
    return std::move(*loaded.book);
}

std::string const flag_rule = rule("flag", "{ present: opaque }", "ophthalmology", "same-day");

}  // namespace

TEST_CASE(
    "a red flag whose rule needs more is silent, and both ways of "
    "silence are told") {
    auto const only_unknown = small_book(
        rule("r", "{ all: [{ present: opaque }, { present: slant }] }", "genetics", "urgent"));
    auto const both = problems(only_unknown, "silent-red-flag");
    REQUIRE(both.size() == 2);
    CHECK(both[0].message ==
          "the red flag `opaque`, alone with all else normal, suggests no service");
    CHECK(both[1].message ==
          "the red flag `opaque`, alone with all else "
          "unknown, suggests no service");
    CHECK(both[0].help == "give it a rule whose condition is its presence");
    CHECK(both[0].span.source->text().substr(both[0].span.begin, 6) == "opaque");
}

TEST_CASE("a red flag is heard through its parent, its tally, or its own rule") {
    CHECK(problems(small_book(flag_rule), "silent-red-flag").empty());
    CHECK(problems(small_book(rule("r", "{ present: lens }", "genetics", "urgent")),
                   "silent-red-flag")
              .empty());
    CHECK(problems(small_book(rule("r", "{ tally: majors, at-least: 1 }", "genetics", "urgent")),
                   "silent-red-flag")
              .empty());
}

TEST_CASE(
    "no condition may silence a red flag: sex, age and gestation are "
    "conditions too") {
    for (auto const* more : {"{ sex: female }", "{ age: { below: 24h } }",
                             "{ gestation: { below: 37w0d } }", "{ absent: slant }"}) {
        CAPTURE(more);
        auto const book =
            small_book(rule("r", std::string("{ all: [{ present: opaque }, ") + more + "] }",
                            "genetics", "urgent"));
        CHECK_FALSE(problems(book, "silent-red-flag").empty());
    }
}

TEST_CASE("a source that nothing cites is told at its place") {
    auto const book = book_of(small_book_head + "rules:\n" + flag_rule,
                              small_ontology +
                                  "  - { source: alone-1999, authors: a, title: t, journal: j, "
                                  "year: 1999, read: memory }\n");
    auto const found = problems(book, "uncited-source");
    REQUIRE(found.size() == 1);
    CHECK(found.front().message == "nothing cites the source `alone-1999`");
    CHECK(found.front().span.source->name() == "ontology.yaml");
}

TEST_CASE(
    "a finding without a class is told, a parent and a history item need "
    "none") {
    CHECK(problems(small_book(flag_rule), "unclassed").empty());
    auto ontology = small_ontology;
    ontology.insert(ontology.find("measures:"),
                    "  - { finding: extra, label: extra sign, step: palm, hpo: "
                    "none, recognise: x. "
                    "}\n");
    auto const found =
        problems(book_of(small_book_head + "rules:\n" + flag_rule, ontology), "unclassed");
    REQUIRE(found.size() == 1);
    CHECK(found.front().message == "the book gives `extra` no class");
}

TEST_CASE("a rule that no vignette expects is told; naming it under `by` is enough") {
    CHECK(problems(small_book(flag_rule), "no-vignette").size() == 1);
    auto const named = book_of(small_book_head + "rules:\n" + flag_rule +
                               "vignettes:\n  - { vignette: v, story: x., case: "
                               "{ findings: [opaque] }, expect: { "
                               "referrals: { ophthalmology: { verdict: "
                               "suggested, by: [flag] } } }, sources: [s] }\n");
    CHECK(problems(named, "no-vignette").empty());
}

TEST_CASE(
    "a soft measure may not refer alone, directly or through a derived "
    "finding") {
    auto ontology = small_ontology;
    auto const at = ontology.find("instrument: ruler");
    ontology.insert(at, "soft: true, ");
    auto const direct =
        book_of(small_book_head + "rules:\n" +
                    rule("r", "{ measured: width, mm: { above: 5 } }", "genetics", "routine"),
                ontology);
    REQUIRE(problems(direct, "rests-on-soft-measure").size() == 1);
    CHECK(problems(direct, "rests-on-soft-measure").front().message.find("`width`") !=
          std::string::npos);
    auto const beside = book_of(small_book_head + "rules:\n" +
                                    rule("r",
                                         "{ all: [{ measured: width, mm: { "
                                         "above: 5 } }, { present: slant }] }",
                                         "genetics", "routine"),
                                ontology);
    CHECK(problems(beside, "rests-on-soft-measure").empty());
}

TEST_CASE("the counts of a book are those of its parts") {
    auto const counts = count_book(small_book(flag_rule));
    CHECK(counts.findings == 11);
    CHECK(counts.steps == 5);
    CHECK(counts.classes == 9);
    CHECK(counts.rules == 1);
    CHECK(counts.constellations == 0);
    CHECK(counts.vignettes == 0);
    CHECK(counts.sources == 1);
}

TEST_CASE(
    "a vignette is read whole: short forms, urgencies, rules, tallies, "
    "constellations") {
    auto const book = book_of(small_book_head + "rules:\n" + flag_rule +
                              "vignettes:\n  - vignette: v\n    story: x.\n    "
                              "case: { case: demo, findings: [opaque] }\n"
                              "    expect:\n      referrals: { genetics: "
                              "unsettled, ophthalmology: { verdict: suggested, "
                              "urgency: same-day, by: flag } }\n      tallies: { "
                              "majors: 1 }\n    sources: [s]\n");
    Diagnostics diagnostics;
    auto const vignettes = read_vignettes(book, diagnostics);
    CHECK(diagnostics.empty());
    REQUIRE(vignettes.size() == 1);
    auto const& one = vignettes.front();
    CHECK(one.baby.id.text == "demo");
    REQUIRE(one.referrals.size() == 2);
    CHECK(one.referrals[0].verdict == Verdict::unsettled);
    CHECK_FALSE(one.referrals[0].by);
    CHECK(one.referrals[1].urgency == Urgency::same_day);
    REQUIRE(one.referrals[1].by);
    CHECK(one.referrals[1].by->front().text == "flag");
    REQUIRE(one.tallies.size() == 1);
    CHECK(one.tallies.front().value == 1);
}
