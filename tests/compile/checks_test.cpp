// SPDX-License-Identifier: MIT
// What a broken book is told, and where.
#include "support/small_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

Diagnostic only(std::string const& text, std::string const& code) {
    auto const loaded = load(text);
    CHECK_FALSE(loaded.book);
    for (auto const& diagnostic : loaded.diagnostics.sorted()) {
        if (diagnostic.code == code) return diagnostic;
    }
    FAIL("no diagnostic ", code, " but ", loaded.diagnostics.sorted().size(), " others");
    return {};
}

std::string with_rule(std::string const& when) {
    return small_book_head + "rules:\n" + rule("r", when, "genetics", "urgent");
}

std::string with_class(std::string const& line) {
    auto text = small_book_head;
    auto const at = text.find("tallies:");
    return text.insert(at, "  - " + line + "\n") + "rules: []\n";
}

}  // namespace

TEST_CASE("an unknown finding in a condition: place and nearest name") {
    auto const d = only(with_rule("{ present: opaqe }"), "unknown-finding");
    CHECK(d.message == "unknown finding `opaqe`");
    CHECK(d.help.find("`opaque`") != std::string::npos);
    CHECK(d.span.source->text().substr(d.span.begin, 5) == "opaqe");
}

TEST_CASE("each refusal of a condition has its code") {
    struct Row {
        char const* when;
        char const* code;
    };
    for (auto const& [when, code] :
         {Row{"{ presnt: slant }", "unknown-condition"},
          Row{"{ present: slant, sid: left }", "unknown-key"},
          Row{"{ present: lens, side: left }", "no-sides"},
          Row{"{ present: digit, grade: boney }", "unknown-grade"},
          Row{"{ present: [slant] }", "wrong-form"},
          Row{"{ all: [] }", "wrong-form"},
          Row{"slant", "wrong-form"},
          Row{"{ at-least: 3, of: [{ present: slant }] }", "unreachable"},
          Row{"{ tally: minrs, at-least: 1 }", "unknown-tally"},
          Row{"{ tally: minors }", "one-bound"},
          Row{"{ tally: minors, at-least: 0 }", "always-true"},
          Row{"{ measured: width, inch: { above: 1 } }", "bad-unit"},
          Row{"{ measured: width, mm: { abov: 1 } }", "unknown-key"},
          Row{"{ measured: width, mm: { above: 5, below: 4 } }", "empty-range"},
          Row{"{ measured: widht, mm: { above: 5 } }", "unknown-measure"},
          Row{"{ age: { below: 24 } }", "bad-bound"},
          Row{"{ gestation: { below: 37.0 } }", "bad-bound"},
          Row{"{ gestation: { below: 37w } }", "bad-bound"},
          Row{"{ sex: femal }", "unknown-value"},
          Row{"{ constellation: nowhere }", "unknown-constellation"}}) {
        CAPTURE(when);
        CHECK_FALSE(only(with_rule(when), code).span.place().empty());
    }
}

TEST_CASE("a child may not be milder than its ancestor, both places shown") {
    auto text = small_book_head;
    auto const at = text.find("finding: opaque, class: red-flag");
    text.replace(at, 32, "finding: opaque, class: minor-variant");
    auto const d = only(text + "rules: []\n", "milder-child");
    REQUIRE(d.related.size() == 1);
    CHECK(d.message.find("`cloudy`") != std::string::npos);
}

TEST_CASE(
    "classes: twice, without a key, two keys in one chain, unknown key, history, unknown source") {
    CHECK(
        only(with_class(
                 "{ finding: slant, class: minor-variant, key: lids, because: x., sources: [s] }"),
             "duplicate-id")
            .message.find("second class") != std::string::npos);
    only(with_class("{ finding: lens, class: minor-variant, because: x., sources: [s] }"),
         "missing-key");
    only(with_class(
             "{ finding: lens, class: minor-variant, key: hands, because: x., sources: [s] }"),
         "two-keys");
    only(with_class(
             "{ finding: lens, class: normal-variant, key: hnds, because: x., sources: [s] }"),
         "unknown-key");
    only(with_class("{ finding: breech, class: normal-variant, because: x., sources: [s] }"),
         "history-class");
    only(
        with_class("{ finding: lens, class: normal-variant, because: x., sources: [nobody-1900] }"),
        "unknown-source");
}

TEST_CASE("derived findings that depend on each other are a cycle, not an endless loop") {
    auto const d = only(
        small_book_head +
            "derived:\n  - { derive: slant, when: { present: fold }, because: x., sources: [s] }\n"
            "  - { derive: fold, when: { present: slant }, because: x., sources: [s] }\nrules: "
            "[]\n",
        "cycle");
    CHECK(d.message == "this derived finding depends on itself");
}

TEST_CASE("constellations that need each other are a cycle") {
    auto const one = [](std::string const& id, std::string const& other) {
        return "  - { constellation: " + id +
               ", label: x, for: genetics, items: [{ item: a, when: { present: slant } }], "
               "reached: { constellation: " +
               other + " }, strength: study, sources: [s] }\n";
    };
    only(small_book_head + "constellations:\n" + one("a", "b") + one("b", "a") + "rules: []\n",
         "cycle");
}

TEST_CASE("headers, services, actions, durations") {
    auto other = small_book_head;
    other.replace(other.find("ontology: small"), 15, "ontology: other");
    only(other + "rules: []\n", "other-ontology");
    only(small_book_head + "rules:\n" + rule("r", "{ present: slant }", "genetic", "urgent"),
         "unknown-service");
    only(small_book_head + "rules:\n" +
             rule("r", "{ present: slant }", "genetics", "urgent", ", first-steps: [scn]"),
         "unknown-action");
    only(small_book_head + "rules:\n" +
             rule("r", "{ present: slant }", "genetics", "urgent",
                  ", follow-up: { action: scan, from: 6w, to: 4w }"),
         "empty-range");
    only(small_book_head + "rules:\n" +
             rule("r", "{ present: slant }", "genetics", "urgent", ", essential: [slant]"),
         "not-history");
    only(small_book_head + "rules:\n" + rule("r", "{ present: slant }", "genetics", "urgent") +
             rule("r", "{ present: fold }", "genetics", "urgent"),
         "duplicate-id");
}

TEST_CASE("one run reports every problem, in the order of the file") {
    auto const loaded =
        load(small_book_head + "rules:\n" + rule("a", "{ present: opaqe }", "genetics", "urgent") +
             rule("b", "{ present: slnt }", "genetic", "urgent"));
    auto const sorted = loaded.diagnostics.sorted();
    REQUIRE(sorted.size() == 3);
    CHECK(sorted[0].message == "unknown finding `opaqe`");
    CHECK(sorted[1].message == "unknown finding `slnt`");
    CHECK(sorted[2].message == "unknown service `genetic`");
}
