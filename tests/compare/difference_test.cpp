// SPDX-License-Identifier: MIT
// What is written differently: every part of a book, and the smallest part of a condition.
#include "review/difference.h"

#include <string>
#include <vector>

#include "support/small_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

std::string line(Difference const& d) {
    return d.part + " " + d.id + " | " + d.aspect + " | " + d.before + " | " + d.after;
}

std::vector<std::string> lines(CompiledRulebook const& before, CompiledRulebook const& after) {
    std::vector<std::string> result;
    for (auto const& difference : differences(before, after)) result.push_back(line(difference));
    return result;
}

CompiledRulebook whole(std::string const& text) {
    auto loaded = load(text);
    for (auto const& d : loaded.diagnostics.sorted()) MESSAGE(d.span.place(), ": ", d.message);
    REQUIRE(loaded.book);
    return std::move(*loaded.book);
}

std::string const tail_of_book = R"(derived:
  - { derive: lens, when: { measured: width, mm: { above: 10 } }, because: x., sources: [s] }
constellations:
  - { constellation: c, label: pattern c, for: genetics, items: [ { item: i, when: { present: slant } },
      { item: j, when: { present: crease }, points: 2 } ], reached: { tally: c, at-least: 2 }, strength: study, sources: [s] }
rules:
  - { rule: r, when: { all: [ { present: slant }, { present: crease } ] }, suggest: { service: genetics, urgency: urgent },
      first-steps: [scan], because: Because., strength: study, sources: [s] }
promises:
  - { promise: p, when: { present: opaque }, then: { suggest: genetics }, because: x., sources: [s] }
)";

std::string const book_text = small_book_head + tail_of_book;

/// The differences that follow from one edit of the text.
std::vector<std::string> edit(std::string const& from, std::string const& to) {
    auto text = book_text;
    auto const at = text.find(from);
    REQUIRE_MESSAGE(at != std::string::npos, from);
    text.replace(at, from.size(), to);
    return lines(whole(book_text), whole(text));
}

std::vector<std::string> edit_rule(std::string const& before, std::string const& after) {
    return lines(small_book(rule("r", before, "genetics", "urgent")),
                 small_book(rule("r", after, "genetics", "urgent")));
}

using Lines = std::vector<std::string>;

}  // namespace

TEST_CASE("a book does not differ from itself, nor from itself in another version") {
    CHECK(lines(whole(book_text), whole(book_text)).empty());
    CHECK(edit("version: 1.0.0", "version: 2.0.0").empty());
    CHECK(edit("effective: 2026-01-01", "effective: 2027-01-01").empty());
}

TEST_CASE("every part of a book is compared") {
    CHECK(edit("{ service: genetics, label: genetics }", "{ service: genetics, label: DNA }") ==
          Lines{"service genetics | name | genetics | DNA"});
    CHECK(edit("{ key: hands, kind: field", "{ key: hands, kind: sequence") ==
          Lines{"counting key hands | kind | field | sequence"});
    CHECK(edit("covers: [lids]", "covers: []") == Lines{"counting key eye | covers | lids | "});
    CHECK(edit("{ finding: crease, class: minor-variant, key: hands",
               "{ finding: crease, class: major-anomaly, key: limb") ==
          Lines{"class crease | class | minor-variant | major-anomaly",
                "class crease | counting key | hands | limb"});
    CHECK(edit("  - { finding: nubbin, class: normal-variant, because: x., sources: [s] }\n", "") ==
          Lines{"class nubbin |  | normal-variant | "});
    CHECK(edit("label: minor variants", "label: small things").front() ==
          "tally minors | name | minor variants | small things");
    CHECK(edit("text: Scan the hips.", "text: Look.") ==
          Lines{"action scan | text | Scan the hips. | Look."});
    CHECK(edit("points: 2", "points: 1") == Lines{"constellation c | points of j | 2 | 1"});
    CHECK(edit("item: i, when: { present: slant }", "item: i, when: { present: fold }") ==
          Lines{"constellation c | item i | slanting eyes | inner fold"});
    CHECK(
        edit("then: { suggest: genetics }", "then: { never: genetics, at-least: urgent }") ==
        Lines{
            "promise p | then | suggested: genetics | never suggested: genetics, at least urgent"});
    CHECK(edit("when: { present: opaque }, then", "for-each: red-flag, alone: true, then").size() ==
          1);
}

TEST_CASE("thresholds are told in words") {
    auto const width = edit("above: 10", "above: 11");
    REQUIRE(width.size() == 1);
    CHECK(width[0].find("derived finding lens | condition | ") == 0);
    CHECK(width[0].find("10") != std::string::npos);
    CHECK(width[0].find("11") != std::string::npos);
    auto const reached =
        edit("reached: { tally: c, at-least: 2 }", "reached: { tally: c, at-least: 3 }");
    REQUIRE(reached.size() == 1);
    CHECK(reached[0].find("constellation c | reached | ") == 0);
}

TEST_CASE("a rule: urgency, service, steps, words, sources") {
    CHECK(edit("urgency: urgent }", "urgency: routine }") ==
          Lines{"rule r | urgency for genetics | urgent | routine"});
    CHECK(edit("suggest: { service: genetics", "suggest: { service: ophthalmology") ==
          Lines{"rule r | urgency for ophthalmology |  | urgent",
                "rule r | urgency for genetics | urgent | "});
    CHECK(edit("first-steps: [scan], ", "") == Lines{"rule r | first steps | scan | "});
    CHECK(edit("because: Because.", "because: For this.") ==
          Lines{"rule r | because | Because. | For this."});
    CHECK(edit("rule: r,", "rule: q,").size() == 2);
}

TEST_CASE("the smallest part of a condition that differs is told") {
    auto const all = [](std::string const& children) { return "{ all: [" + children + "] }"; };
    std::string const slant = "{ present: slant }", fold = "{ present: fold }",
                      crease = "{ present: crease }";
    CHECK(edit_rule(all(slant + ", " + crease), all(slant + ", " + fold)) ==
          Lines{"rule r | condition | palm crease | inner fold"});
    CHECK(edit_rule(all(slant + ", " + crease), all(slant + ", " + crease + ", " + fold)) ==
          Lines{"rule r | condition |  | inner fold"});
    CHECK(edit_rule(all(slant + ", " + crease + ", " + fold), all(slant + ", " + crease)) ==
          Lines{"rule r | condition | inner fold | "});
    CHECK(edit_rule(all(slant + ", " + crease), all(crease + ", " + slant)).empty());
    CHECK(edit_rule(all(slant + ", { any: [" + crease + ", " + fold + "] }"),
                    all(slant + ", { any: [" + crease + ", { present: digit }] }")) ==
          Lines{"rule r | condition | inner fold | extra digit"});
    auto const count = edit_rule("{ at-least: 1, of: [" + slant + ", " + crease + "] }",
                                 "{ at-least: 2, of: [" + slant + ", " + crease + "] }");
    REQUIRE(count.size() == 1);
    CHECK(count[0].find("at least 1 of") != std::string::npos);
    CHECK(count[0].find("at least 2 of") != std::string::npos);
    CHECK(edit_rule(slant, "{ absent: slant }").size() == 1);
    CHECK(
        edit_rule(all(slant + ", " + crease), "{ any: [" + slant + ", " + crease + "] }").size() ==
        1);
}

TEST_CASE("places are those of the later book, of the earlier for what is gone") {
    auto const one = small_book(rule("a", "{ present: slant }", "genetics", "urgent"));
    auto const two = small_book(rule("b", "{ present: slant }", "genetics", "urgent"));
    for (auto const& d : differences(one, two)) CHECK(d.place.find("book.yaml:") == 0);
    auto const all = differences(one, two);
    REQUIRE(all.size() == 2);
    CHECK(all[0].after.empty());
    CHECK(all[0].before == "genetics, urgent when slanting eyes");
    CHECK(all[1].before.empty());
}
