// SPDX-License-Identifier: MIT
/// present and absent, with sides and grades.
#include "questions.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

using Texts = std::vector<std::string>;

TEST_CASE("the plain form asks for the finding") {
    CHECK(asked("{ present: slant }") == Texts{"slant"});
    CHECK(asked("{ absent: slant }") == Texts{"slant"});
}

TEST_CASE("a side or a grade asks for that, not for the finding") {
    CHECK(asked("{ present: crease, side: left }") == Texts{"crease left"});
    CHECK(asked("{ present: crease, side: right }") == Texts{"crease right"});
    CHECK(asked("{ present: crease, side: both }") == Texts{"crease both"});
    CHECK(asked("{ present: crease, side: one }") == Texts{"crease one"});
    CHECK(asked("{ present: digit, grade: bony }") == Texts{"digit bony"});
    CHECK(asked("{ present: digit, grade: [tag, bony] }") == Texts{"digit tag", "digit bony"});
    CHECK(asked("{ present: digit, side: left, grade: tag }") == Texts{"digit left", "digit tag"});
}

TEST_CASE("one of several grades is enough, a side and a grade are both needed") {
    constexpr auto n = Truth::no, u = Truth::unknown, y = Truth::yes;
    std::string const either = "{ present: digit, grade: [tag, bony] }";
    CHECK(holds(either, {{"digit tag", n}, {"digit bony", y}}) == y);
    CHECK(holds(either, {{"digit tag", n}, {"digit bony", u}}) == u);
    CHECK(holds(either, {{"digit tag", n}, {"digit bony", n}}) == n);
    std::string const both = "{ present: digit, side: left, grade: bony }";
    CHECK(holds(both, {{"digit left", y}, {"digit bony", y}}) == y);
    CHECK(holds(both, {{"digit left", y}, {"digit bony", u}}) == u);
    CHECK(holds(both, {{"digit left", u}, {"digit bony", n}}) == n);
}

TEST_CASE("absent with a side: not there on that side") {
    CHECK(holds("{ absent: crease, side: left }", {{"crease left", Truth::no}}) == Truth::yes);
    CHECK(holds("{ absent: crease, side: left }", {{"crease left", Truth::yes}}) == Truth::no);
    CHECK(holds("{ absent: crease, side: left }", {{"crease", Truth::no}}) == Truth::unknown);
}

TEST_CASE("in words") {
    CHECK(words("{ present: slant }") == "slanting eyes");
    CHECK(words("{ absent: slant }") == "slanting eyes absent");
    CHECK(words("{ present: crease, side: left }") == "palm crease on the left");
    CHECK(words("{ present: crease, side: right }") == "palm crease on the right");
    CHECK(words("{ present: crease, side: both }") == "palm crease on both sides");
    CHECK(words("{ present: crease, side: one }") == "palm crease on one side only");
    CHECK(words("{ present: digit, grade: bony }") == "extra digit (bony)");
    CHECK(words("{ present: digit, side: left, grade: [tag, bony] }") ==
          "extra digit on the left (tag or bony)");
    CHECK(words("{ all: [{ present: slant }, { present: fold }, { absent: lens "
                "}] }") == "(slanting eyes, inner fold and any lens sign absent)");
    CHECK(words("{ any: [{ present: slant }, { present: fold }] }") ==
          "(slanting eyes or inner fold)");
    CHECK(words("{ none: [{ present: slant }, { present: fold }] }") ==
          "none of (slanting eyes or inner fold)");
    CHECK(words("{ at-least: 2, of: [{ present: slant }, { present: fold }, { "
                "present: lens }] }") ==
          "at least 2 of (slanting eyes, inner fold and any lens sign)");
    CHECK(words("{ any: [{ present: slant }] }") == "slanting eyes");
}

TEST_CASE("the leaf says which finding, and whether its absence is wanted") {
    auto const present = good("{ present: slant }")->leaf();
    CHECK(present.kind == Leaf::Kind::finding);
    CHECK(present.index == condition_ontology().finding("slant"));
    CHECK_FALSE(present.wants_absent);
    CHECK(good("{ absent: slant }")->leaf().wants_absent);
}

TEST_CASE(
    "the book uses ids alone: a label or a synonym is unknown there, and "
    "is suggested as id") {
    CHECK(refused("{ present: opaque lens }").code == "unknown-finding");
    CHECK(refused("{ present: Opaque }").help == "did you mean `opaque`");
    auto const slip = refused("{ present: creese }");
    CHECK(slip.message == "unknown finding `creese`");
    CHECK(slip.help.find("did you mean `crease`") == 0);
    CHECK(slip.span.place() == "book.yaml:1:12");
}

TEST_CASE("each refusal points at the word that is wrong") {
    struct Row {
        char const* text;
        char const* code;
        char const* place;
    };
    for (auto const& [text, code, place] :
         {Row{"{ present: lens, side: left }", "no-sides", "book.yaml:1:12"},
          Row{"{ present: crease, side: lft }", "unknown-value", "book.yaml:1:26"},
          Row{"{ present: digit, grade: boney }", "unknown-grade", "book.yaml:1:26"},
          Row{"{ present: digit, grade: [tag, boney] }", "unknown-grade", "book.yaml:1:32"},
          Row{"{ present: crease, grade: bony }", "unknown-grade", "book.yaml:1:27"},
          Row{"{ present: { finding: slant } }", "wrong-form", "book.yaml:1:12"},
          Row{"{ absent: [slant, fold] }", "wrong-form", "book.yaml:1:11"}}) {
        CAPTURE(text);
        Diagnostics diagnostics;
        read_text(text, diagnostics);
        auto const all = diagnostics.sorted();
        REQUIRE_FALSE(all.empty());
        CHECK(all.front().code == code);
        CHECK(all.front().span.place() == place);
    }
}

TEST_CASE("a wrong grade names the nearest") {
    CHECK(refused("{ present: digit, grade: boney }").help == "did you mean `bony`");
}
