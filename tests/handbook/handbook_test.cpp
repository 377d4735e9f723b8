// SPDX-License-Identifier: MIT
// The booklet of a small invented book: every part, its sentences, and hostile words.
#include "render/handbook.h"

#include <string>

#include "render/handbook_parts.h"
#include "support/small_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

CompiledRulebook whole(std::string const& text, std::string const& ontology = small_ontology) {
    auto loaded = load(text, ontology);
    for (auto const& d : loaded.diagnostics.sorted()) MESSAGE(d.span.place(), ": ", d.message);
    REQUIRE(loaded.book);
    return std::move(*loaded.book);
}

std::string const parts = R"(derived:
  - { derive: lens, when: { measured: width, mm: { above: 10 } }, because: Too wide., sources: [s] }
constellations:
  - { constellation: c, label: pattern c, for: genetics, note: Mind this., items: { major: [ { item: i, when: { present: slant }, points: 2 } ],
      minor: [ { item: j, when: { any: [ { present: crease }, { present: fold } ] } } ] }, reached: { tally: c, at-least: 2 }, strength: study, sources: [s] }
rules:
  - { rule: r, when: { all: [ { present: slant }, { present: crease } ] }, suggest: [ { service: genetics, urgency: urgent },
      { service: ophthalmology, urgency: same-day } ], first-steps: [scan], follow-up: { action: scan, from: 4w, to: 3m },
      essential: [breech], caution: Go slowly., because: Because of that., strength: study, sources: [s] }
promises:
  - { promise: p, when: { present: opaque }, then: { suggest: genetics, at-least: routine }, because: It must., sources: [s] }
)";

std::vector<ReleaseNotes> const notes{{{"1.0.0", {}}, "2026-01-01", {"The `first` book."}}};

std::string markdown() {
    return handbook_markdown(handbook(whole(small_book_head + parts), notes));
}
std::string html() { return handbook_html(handbook(whole(small_book_head + parts), notes)); }

void holds(std::string const& text, std::vector<std::string> const& wanted) {
    for (auto const& part : wanted) {
        CAPTURE(part);
        CHECK(text.find(part) != std::string::npos);
    }
}

HandbookClause clause(std::string const& when) {
    auto const book = small_book(rule("r", when, "genetics", "urgent"));
    return clause_of(*book.rules[0].when->condition, book.vocabulary());
}

}  // namespace

TEST_CASE("every part of a book is in the booklet") {
    holds(html(),
          {"<h1>small</h1>",
           "Rulebook small 1.0.0, in force from 2026-01-01",
           "For {present: opaque}: suggested: genetics, at least routine.",
           "Slanting eyes <span",
           "minor variant</span>",
           "href=\"#key-lids\"",
           "Shine.",
           "Essential: left out",
           "boys only",
           "id=\"derived-lens\"",
           "Too wide.",
           "id=\"constellation-c\"",
           "Major",
           "i (2 points): slanting eyes",
           "j (1 point): palm crease or inner fold</li>",
           "Mind this.",
           "If slanting eyes and palm crease: genetics (urgent) and ophthalmology (same day).",
           "From 4w to 3m after birth: Scan the hips. ",
           "Caution: Go slowly.",
           "It must.",
           "a. t. j 2000.",
           "The first book.",
           "in force from 2026-01-01",
           "href=\"#finding-crease\">palm crease, ",
           "Nothing here is a diagnosis"});
}

TEST_CASE("the Markdown says the same") {
    holds(markdown(),
          {"# small\n", "## Findings, head to toe\n", "### Eyes\n", "Slanting eyes",
           "## Rules, by service\n", "If slanting eyes and palm crease: genetics \\(urgent\\)",
           "Scan the hips.", "## Index\n", "The first book.", "Nothing here is a diagnosis"});
    CHECK(markdown().find("..") == std::string::npos);
}

TEST_CASE("a long condition is told in parts, a short one in a sentence") {
    CHECK(clause("{ present: slant }").text == "slanting eyes");
    CHECK(clause("{ any: [ { present: slant }, { present: fold } ] }").text ==
          "slanting eyes or inner fold");
    CHECK(
        clause(
            "{ all: [ { any: [ { present: slant }, { present: fold } ] }, { present: crease } ] }")
            .parts.empty());
    auto const pair = [](std::string const& a, std::string const& b) {
        return "{ any: [ { present: " + a + " }, { present: " + b + " } ] }";
    };
    auto const three =
        pair("slant", "fold") + ", " + pair("crease", "digit") + ", " + pair("nubbin", "hole");
    auto const all = clause("{ all: [ " + three + " ] }");
    CHECK(all.text == "all of these");
    REQUIRE(all.parts.size() == 3);
    CHECK(all.parts[1].text == "palm crease or extra digit");
    CHECK(clause("{ at-least: 2, of: [ " + three + " ] }").text == "at least 2 of these");
    CHECK(clause("{ none: [ " + three + " ] }").text == "none of these");
    auto const brackets =
        clause("{ any: [ " + pair("slant", "fold") + ", " + pair("crease", "digit") + " ] }");
    CHECK(brackets.text == "(slanting eyes or inner fold) or (palm crease or extra digit)");
}

TEST_CASE("a rule in parts ends with what it suggests") {
    std::string const pairs =
        "{ all: [ { any: [ { present: slant }, { present: fold } ] }, { any: [ { present: crease "
        "}, "
        "{ present: digit } ] }, { any: [ { present: nubbin }, { present: hole } ] } ] }";
    auto const page =
        handbook_html(handbook(small_book(rule("r", pairs, "genetics", "urgent")), {}));
    holds(page,
          {"If all of these:", "<li>palm crease or extra digit</li>", "Then genetics (urgent)."});
}

TEST_CASE("findings name the rules that name them, and every link leads somewhere") {
    auto const page = html();
    holds(page, {"<b>Rules</b> <a href=\"#rule-r\">R1</a>"});
    std::size_t links = 0;
    for (auto at = page.find("href=\"#"); at != std::string::npos;
         at = page.find("href=\"#", at + 1)) {
        auto const begin = at + 7, end = page.find('"', begin);
        auto const anchor = page.substr(begin, end - begin);
        CAPTURE(anchor);
        CHECK(page.find(" id=\"" + anchor + "\"") != std::string::npos);
        ++links;
    }
    CHECK(links > 30);
}

TEST_CASE("hostile words in a book are inert") {
    std::string const evil = "<script>x</script>\\x1b[31m & \\\"q\\\" [a](b) *c* # d | e";
    auto text = small_book_head + parts;
    auto const swap = [&](std::string const& from) {
        auto const at = text.find(from);
        REQUIRE(at != std::string::npos);
        text.replace(at, from.size(), "\"" + evil + "\"");
    };
    swap("Because of that.");
    swap("Go slowly.");
    swap("Mind this.");
    swap("Scan the hips.");
    auto const book = whole(text);
    std::vector<ReleaseNotes> const evil_notes{{{"1.0.0", {}}, "<i>", {"<script>y</script>"}}};
    auto const page = handbook_html(handbook(book, evil_notes));
    CHECK(page.find("<script") == std::string::npos);
    CHECK(page.find("<i>") == std::string::npos);
    CHECK(page.find('\x1b') == std::string::npos);
    CHECK(page.find("&lt;script&gt;x") != std::string::npos);
    auto const plain = handbook_markdown(handbook(book, evil_notes));
    CHECK(plain.find("<script") == std::string::npos);
    CHECK(plain.find("[a](b)") == std::string::npos);
    CHECK(plain.find("*c*") == std::string::npos);
    CHECK(plain.find('\x1b') == std::string::npos);
}

TEST_CASE("chapters without content are left out") {
    auto const page = handbook_html(
        handbook(small_book(rule("r", "{ present: slant }", "genetics", "urgent")), {}));
    for (auto const* chapter : {"changes", "promises", "constellations", "derived"}) {
        CAPTURE(chapter);
        CHECK(page.find("id=\"" + std::string(chapter) + "\"") == std::string::npos);
    }
    CHECK(page.find("id=\"rules\"") != std::string::npos);
}
