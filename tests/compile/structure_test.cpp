// SPDX-License-Identifier: MIT
// Scores, constellations with groups, references: what they mean, and what they
// are refused for.
#include "support/small_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

std::string constellation(std::string const& items, std::string const& reached) {
    return "constellations:\n  - constellation: pattern\n    label: the "
           "pattern\n    for: "
           "genetics\n    items: " +
           items + "\n    reached: " + reached + "\n    strength: study\n    sources: [s]\n";
}

std::string const two_groups =
    "{ major: [{ item: lens, when: { present: lens "
    "} }, { item: digit, when: { present: digit } "
    "}], minor: [{ item: slant, when: { present: "
    "slant } }, { item: crease, when: { present: "
    "crease }, points: 0.5 }] }";

CompiledRulebook grouped(std::string const& reached, std::string const& when) {
    auto loaded = load(small_book_head + constellation(two_groups, reached) + "rules:\n" +
                       rule("r", when, "genetics", "routine"));
    for (auto const& diagnostic : loaded.diagnostics.sorted())
        MESSAGE(diagnostic.span.place(), ": ", diagnostic.message);
    REQUIRE(loaded.book);
    return std::move(*loaded.book);
}

std::vector<std::string> codes_of(std::string const& text) {
    auto const loaded = load(text);
    CHECK_FALSE(loaded.book);
    return codes(loaded.diagnostics);
}

std::string replaced(std::string text, std::string const& from, std::string const& to) {
    auto const at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

using Codes = std::vector<std::string>;

}  // namespace

TEST_CASE("groups of a constellation make a tally each, and one of all items") {
    auto const book = grouped(
        "{ all: [{ tally: pattern/major, at-least: 1 }, { "
        "tally: pattern/minor, at-least: 1.5 }] }",
        "{ constellation: pattern }");
    auto const reached = judge(book, "examined: all\nfindings: [digit, slant, crease]\n");
    CHECK(verdict(reached, "genetics") == "suggested");
    REQUIRE(reached.constellations.size() == 1);
    CHECK(reached.constellations.front().low == "2.5");
    CHECK(reached.constellations.front().possible == "3.5");
    CHECK(reached.constellations.front().reached == Truth::yes);
    auto const missed = judge(book, "examined: all\nfindings: [digit, slant]\n");
    CHECK(verdict(missed, "genetics") == "not-suggested");
    CHECK(missed.constellations.front().reached == Truth::no);
}

TEST_CASE("rules may ask for a group, for the whole, or for the rule being reached") {
    std::string const reached = "{ tally: pattern, at-least: 2 }";
    std::string const baby = "examined: all\nfindings: [digit, slant]\n";
    CHECK(verdict(judge(grouped(reached, "{ tally: pattern/major, at-least: 1 }"), baby),
                  "genetics") == "suggested");
    CHECK(verdict(judge(grouped(reached, "{ tally: pattern/minor, at-least: 2 }"), baby),
                  "genetics") == "not-suggested");
    CHECK(verdict(judge(grouped(reached, "{ tally: pattern, at-least: 2 }"), baby), "genetics") ==
          "suggested");
    CHECK(verdict(judge(grouped(reached, "{ constellation: pattern }"), baby), "genetics") ==
          "suggested");
}

TEST_CASE("an open item leaves the constellation open between its bounds") {
    auto const book = grouped("{ tally: pattern, at-least: 2 }", "{ constellation: pattern }");
    auto const open = judge(book, "findings: [digit]\nexamined: [palm]\n");
    CHECK(verdict(open, "genetics") == "unsettled");
    REQUIRE(open.constellations.size() == 1);
    CHECK(open.constellations.front().reached == Truth::unknown);
    CHECK(open.constellations.front().low == "1");
    CHECK(open.constellations.front().high == "3");
}

TEST_CASE("items keep the order of the book and say each how it stands") {
    auto const book = grouped("{ tally: pattern, at-least: 2 }", "{ constellation: pattern }");
    auto const answer = judge(book, "findings: [digit]\nexamined: [palm]\n");
    auto const& items = answer.constellations.front().items;
    REQUIRE(items.size() == 4);
    CHECK(items[0].item == "lens");
    CHECK(items[0].value == Truth::unknown);
    CHECK(items[1].item == "digit");
    CHECK(items[1].value == Truth::yes);
    CHECK(items[3].points == "0.5");
    CHECK(items[3].value == Truth::no);
}

TEST_CASE("a constellation without a single item present is not reported") {
    auto const book = grouped("{ tally: pattern, at-least: 2 }", "{ constellation: pattern }");
    CHECK(judge(book, "examined: all\n").constellations.empty());
    CHECK(judge(book, "examined: all\nfindings: [nubbin]\n").constellations.empty());
}

TEST_CASE("points are above nothing and in tenths") {
    for (auto const* points : {"0", "-1", "0.05", "1.25"}) {
        CAPTURE(points);
        auto const items =
            std::string("[{ item: a, when: { present: slant }, points: ") + points + " }]";
        auto const found =
            codes_of(small_book_head + constellation(items, "{ tally: pattern, at-least: 1 }") +
                     "rules: []\n");
        CHECK(std::find(found.begin(), found.end(), "bad-points") != found.end());
    }
}

TEST_CASE("a tally counts classes or sums a score, one of the two") {
    auto const both = replaced(small_book_head, "label: minor variants, count: minor-variant }",
                               "label: x, count: minor-variant, score: [{ item: a, when: { "
                               "present: slant } }] }");
    CHECK(codes_of(both + "rules: []\n") == Codes{"one-of"});
    auto const neither = replaced(small_book_head, ", count: minor-variant }", " }");
    CHECK(codes_of(neither + "rules: []\n") == Codes{"one-of"});
}

TEST_CASE("a constellation may not take the name of a tally") {
    auto const text = replaced(
        constellation("[{ item: a, when: { present: slant } }]", "{ tally: minors, at-least: 1 }"),
        "constellation: pattern", "constellation: minors");
    auto const found = codes_of(small_book_head + text + "rules: []\n");
    CHECK(std::find(found.begin(), found.end(), "duplicate-id") != found.end());
}

TEST_CASE("names defined twice are shown at both places") {
    for (auto const& [first, again] : {std::pair{"  - { service: genetics, label: genetics }\n",
                                                 "  - { service: genetics, label: again }\n"},
                                       std::pair{"  - { key: lids, kind: field, because: x. }\n",
                                                 "  - { key: lids, kind: field, because: y. }\n"},
                                       std::pair{"  - { action: scan, text: Scan the hips. }\n",
                                                 "  - { action: scan, text: Again. }\n"}}) {
        CAPTURE(again);
        auto const loaded =
            load(replaced(small_book_head, first, std::string(first) + again) + "rules: []\n");
        CHECK_FALSE(loaded.book);
        auto const all = loaded.diagnostics.sorted();
        REQUIRE_FALSE(all.empty());
        CHECK(all.front().code == "duplicate-id");
        REQUIRE(all.front().related.size() == 1);
        CHECK(all.front().related.front().message == "first defined here");
        CHECK(before(all.front().related.front().span, all.front().span));
    }
}

TEST_CASE("every part that cites a source is checked for it") {
    std::string const unknown = "sources: [nobody-1900] }";
    auto const cites = [&](std::string const& text) {
        auto const found = codes_of(text);
        CHECK(found == Codes{"unknown-source"});
    };
    cites(small_book_head +
          "derived:\n  - { derive: slant, when: { present: fold }, because: x., " + unknown +
          "\nrules: []\n");
    cites(small_book_head +
          "rules:\n  - { rule: r, when: { present: slant }, suggest: { service: "
          "genetics, urgency: "
          "urgent }, because: x., strength: study, " +
          unknown + "\n");
    cites(small_book_head + "vignettes:\n  - { vignette: v, story: x., case: {}, expect: {}, " +
          unknown + "\nrules: []\n");
    cites(small_book_head +
          replaced(constellation("[{ item: a, when: { present: slant } }]",
                                 "{ tally: pattern, at-least: 1 }"),
                   "sources: [s]", "sources: [nobody-1900]") +
          "rules: []\n");
}

TEST_CASE("a field that a key covers must exist") {
    auto const loaded =
        load(replaced(small_book_head, "covers: [lids]", "covers: [lidz]") + "rules: []\n");
    REQUIRE(loaded.diagnostics.sorted().size() == 1);
    CHECK(loaded.diagnostics.sorted().front().message == "unknown key `lidz`");
    CHECK(loaded.diagnostics.sorted().front().help.find("did you mean `lids`") == 0);
}

TEST_CASE("dates and windows are read by the calendar") {
    CHECK(codes_of(replaced(small_book_head, "2026-01-01", "2026-02-30") + "rules: []\n") ==
          Codes{"bad-date"});
    for (auto const* window : {"from: 4, to: 6w", "from: soon, to: 6w"}) {
        CAPTURE(window);
        auto const found =
            codes_of(small_book_head + "rules:\n" +
                     rule("r", "{ present: slant }", "genetics", "urgent",
                          std::string(", follow-up: { action: scan, ") + window + " }"));
        CHECK(found.front() == "bad-duration");
    }
}

TEST_CASE("the compiled book keeps its effective day, its classes and its digest") {
    auto const book = small_book("  []\n");
    CHECK(to_text(book.effective) == "2026-01-01");
    CHECK(book.class_of(*book.ontology->finding("opaque")) == FindingClass::red_flag);
    CHECK_FALSE(book.class_of(*book.ontology->finding("lens")));
    CHECK(book.book->digest.size() == 64);
    auto const labels = book.vocabulary().tallies;
    CHECK(std::vector<std::string>(labels.begin(), labels.end()) ==
          std::vector<std::string>{"minor variants", "major anomalies"});
}

TEST_CASE("compiling the same book twice gives the same circuit") {
    auto const rules = rule("r", "{ tally: minors, at-least: 2 }", "genetics", "urgent");
    auto const one = small_book(rules), two = small_book(rules);
    REQUIRE(one.circuit.size() == two.circuit.size());
    for (NodeId node = 0; node < one.circuit.size(); ++node) {
        REQUIRE(one.circuit.is_fact(node) == two.circuit.is_fact(node));
        if (one.circuit.is_fact(node)) continue;
        CHECK(one.circuit.threshold(node) == two.circuit.threshold(node));
        CHECK(one.circuit.inputs(node).size() == two.circuit.inputs(node).size());
    }
    CHECK(one.book->digest == two.book->digest);
}
