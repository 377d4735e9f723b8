// SPDX-License-Identifier: MIT
/// The registry of condition kinds: each reads, describes its shape, and keeps
/// its place.
#include "questions.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

struct Example {
    char const* keyword;
    char const* kind;
    char const* text;
};

constexpr Example examples[] = {
    {"present", "present", "{ present: slant }"},
    {"absent", "absent", "{ absent: slant }"},
    {"all", "all", "{ all: [{ present: slant }, { present: fold }] }"},
    {"any", "any", "{ any: [{ present: slant }, { present: fold }] }"},
    {"none", "none", "{ none: [{ present: slant }] }"},
    {"of", "at-least", "{ at-least: 1, of: [{ present: slant }] }"},
    {"tally", "tally", "{ tally: minors, at-least: 2 }"},
    {"constellation", "constellation", "{ constellation: pattern }"},
    {"measured", "measured", "{ measured: width, mm: { above: 5 } }"},
    {"age", "age", "{ age: { below: 24h } }"},
    {"gestation", "gestation", "{ gestation: { below: 37w0d } }"},
    {"sex", "sex", "{ sex: female }"},
};

}  // namespace

TEST_CASE("every kind has an example here, in the order of the registry") {
    auto const& kinds = condition_kinds();
    REQUIRE(kinds.size() == std::size(examples));
    for (std::size_t i = 0; i < kinds.size(); ++i) CHECK(kinds[i].keyword == examples[i].keyword);
}

TEST_CASE("every kind reads its example, keeps its name and place") {
    for (auto const& example : examples) {
        CAPTURE(example.text);
        auto const condition = good(example.text);
        CHECK(condition->kind() == example.kind);
        CHECK(condition->span().place() == "book.yaml:1:1");
        CHECK_FALSE(words(example.text).empty());
    }
}

TEST_CASE("every kind describes its fields, the keyword among them") {
    for (auto const& kind : condition_kinds()) {
        CAPTURE(kind.keyword);
        auto const shape = kind.shape();
        CHECK(shape.kind == yaml::Shape::Kind::record);
        bool found = false;
        for (auto const& field : shape.fields) {
            found = found || (field.name == kind.keyword && field.required);
            CHECK_FALSE(field.doc.empty());
        }
        CHECK(found);
    }
}

TEST_CASE("every kind refuses a key that it does not know, with the nearest") {
    for (auto const& example : examples) {
        if (std::string_view(example.keyword) == "measured") continue;  // has units as keys
        std::string text = example.text;
        text.insert(text.rfind('}'), ", becuase: x ");
        CAPTURE(text);
        Diagnostics diagnostics;
        read_text(text, diagnostics);
        REQUIRE(diagnostics.sorted().size() == 1);
        CHECK(diagnostics.sorted().front().code == "unknown-key");
    }
}

TEST_CASE("what is no condition at all") {
    CHECK(refused("slant").code == "wrong-form");
    CHECK(refused("[{ present: slant }]").code == "wrong-form");
    CHECK(refused("{}").code == "wrong-form");
    auto const unknown = refused("{ presnt: slant }");
    CHECK(unknown.code == "unknown-condition");
    CHECK(unknown.help == "did you mean `present`");
    CHECK(unknown.span.place() == "book.yaml:1:3");
}

TEST_CASE("a list of conditions reports every one that is wrong") {
    Diagnostics diagnostics;
    auto const condition = read_text(
        "all:\n  - { present: slnt }\n  - { present: slant }\n  - { "
        "presnt: fold }\n  - any: [{ "
        "present: crese }]\n",
        diagnostics);
    CHECK_FALSE(condition);
    auto const all = diagnostics.sorted();
    REQUIRE(all.size() == 3);
    CHECK(all[0].span.place() == "book.yaml:2:16");
    CHECK(all[1].span.place() == "book.yaml:4:7");
    CHECK(all[2].span.place() == "book.yaml:5:22");
}

TEST_CASE("groups need a list with something in it") {
    for (auto const* text : {"{ all: [] }", "{ any: [] }", "{ none: [] }", "{ all: slant }",
                             "{ at-least: 1, of: [] }", "{ any: { present: slant } }"}) {
        CAPTURE(text);
        CHECK(refused(text).code == "wrong-form");
    }
}

TEST_CASE("at least n: n within the list, a whole number from 1") {
    CHECK(refused("{ at-least: 2, of: [{ present: slant }] }").code == "unreachable");
    CHECK(refused("{ at-least: 2, of: [{ present: slant }] }").message ==
          "at least 2 of 1 conditions can never hold");
    for (auto const* count : {"0", "-1", "1.5", "two", "yes"}) {
        Diagnostics diagnostics;
        CAPTURE(count);
        CHECK_FALSE(read_text(std::string("{ at-least: ") + count + ", of: [{ present: slant }] }",
                              diagnostics));
        CHECK(diagnostics.has_errors());
    }
    CHECK(refused("{ of: [{ present: slant }] }").code == "missing-key");
}

TEST_CASE("words are joined as one says them") {
    CHECK(list_in_words({}, "and") == "");
    CHECK(list_in_words({"a"}, "and") == "a");
    CHECK(list_in_words({"a", "b"}, "or") == "a or b");
    CHECK(list_in_words({"a", "b", "c"}, "and") == "a, b and c");
}
