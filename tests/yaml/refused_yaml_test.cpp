// SPDX-License-Identifier: MIT
/// What the YAML reader refuses, each with its place.
#include "trees.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

struct Row {
    char const* text;
    Reported reported;
};

}  // namespace

TEST_CASE("each pitfall of YAML is refused at its place") {
    for (Row const& row : {
             Row{"a: 1\nb: 2\na: 3\n", {"duplicate-key 3:1"}},
             Row{"x:\n  - {a: 1, a: 2}\n", {"duplicate-key 2:12"}},
             Row{"a: 1\n'a': 2\n", {"duplicate-key 2:1"}},
             Row{"a: &x 1\n", {"yaml-anchor 1:4"}},
             Row{"a: !!str 1\n", {"yaml-tag 1:4"}},
             Row{"a: !mine {b: 1}\n", {"yaml-tag 1:4"}},
             Row{"[a, b]: c\n", {"yaml-key 1:1"}},
             Row{"{a: b}: c\n", {"yaml-key 1:1"}},
         }) {
        CAPTURE(std::string(row.text));
        CHECK(yaml_text(row.text).reported() == row.reported);
    }
}

TEST_CASE("a duplicate key is shown at both places") {
    auto const reading = yaml_text("sex: male\nage: 2d\nsex: female\n");
    auto const all = reading.all();
    REQUIRE(all.size() == 1);
    CHECK(all[0].message == "the key `sex` stands twice in one map");
    CHECK(all[0].span.place() == "t.yaml:3:1");
    REQUIRE(all[0].related.size() == 1);
    CHECK(all[0].related[0].span.place() == "t.yaml:1:1");
    CHECK_FALSE(all[0].help.empty());
}

TEST_CASE("after a duplicate key the first value stays and reading goes on") {
    auto const reading = yaml_text("a: 1\na: 2\nb: 3\na: 4\n");
    CHECK(reading.tree() == "{a: 1, b: 3}");
    CHECK(reading.reported() == Reported{"duplicate-key 2:1", "duplicate-key 4:1"});
}

TEST_CASE("the same key in two maps is no duplicate") {
    CHECK(yaml_text("- a: 1\n- a: 2\n").all().empty());
    CHECK(yaml_text("a: {a: {a: 1}}\n").all().empty());
}

TEST_CASE("a duplicate key with a map as value is seen too") {
    auto const reading = yaml_text("a:\n  b: 1\na:\n  b: 2\n");
    CHECK(reading.reported() == Reported{"duplicate-key 3:1"});
}

TEST_CASE("a second document is refused where it starts") {
    auto const reading = yaml_text("a: 1\n---\nb: 2\n");
    REQUIRE(reading.all().size() == 1);
    CHECK(reading.all()[0].code == "second-document");
    CHECK(reading.all()[0].span.position().line >= 2);
    CHECK_FALSE(reading.node);
    CHECK(yaml_text("a: 1\n---\nb: 2\n---\nc: 3\n").all().size() == 1);
    CHECK(yaml_text("a: 1\n...\n---\nb: 2\n").all()[0].code == "second-document");
}

TEST_CASE("an alias is refused where it stands, not where its anchor does") {
    auto const reading = yaml_text("a: &x 1\nb: *x\n");
    CHECK(reading.reported() == Reported{"yaml-anchor 1:4", "yaml-alias 2:4"});
}

TEST_CASE("a merge key gives anchor and alias errors and merges nothing") {
    auto const reading = yaml_text("base: &b {x: 1}\nuse:\n  <<: *b\n  y: 2\n");
    CHECK(reading.reported() == Reported{"yaml-anchor 1:7", "yaml-alias 3:7"});
    REQUIRE(reading.node);
    CHECK(reading.node->find("use")->find("x") == nullptr);
    CHECK(reading.node->find("use")->find("y")->text == "2");
}

TEST_CASE("an anchor on nothing, on a list and on a map is refused") {
    for (auto const* text : {"a: &x\nb: 1\n", "a: &x [1]\n", "a: &x {b: 1}\n"}) {
        CAPTURE(std::string(text));
        auto const all = yaml_text(text).all();
        REQUIRE(all.size() == 1);
        CHECK(all[0].code == "yaml-anchor");
        CHECK(all[0].span.position().line == 1);
    }
}

TEST_CASE("a refused anchor leaves a tree for further checks") {
    auto const reading = yaml_text("a: &x 1\nb: 2\n");
    CHECK(reading.tree() == "{a: 1, b: 2}");
    CHECK(reading.diagnostics.has_errors());
}

TEST_CASE("a tag is named") {
    auto const all = yaml_text("a: !!binary aGVsbG8=\n").all();
    REQUIRE(all.size() == 1);
    CHECK(all[0].code == "yaml-tag");
    CHECK(all[0].message.find("binary") != std::string::npos);
}

TEST_CASE("a syntax error keeps the parser's reason and its place") {
    for (std::string const text : {"a: [1, 2\nb: 3\n", "a: 'open", "a: b: c\n", "\ta: 1\n",
                                   "a: *nobody\n", "a: {b: 1\n", "a: 1\n  b: 2\n"}) {
        CAPTURE(text);
        auto const reading = yaml_text(text);
        CHECK_FALSE(reading.node);
        auto const all = reading.all();
        REQUIRE(all.size() == 1);
        CHECK(all[0].code == "yaml-syntax");
        std::string const start = "YAML cannot be read: ";
        CHECK(all[0].message.substr(0, start.size()) == start);
        CHECK(all[0].message.size() > start.size() + 5);
        CHECK(all[0].span.known());
    }
}

TEST_CASE("a quote that is never closed is refused at the quote") {
    for (std::string const text : {"a: 'open\n", "a: 'open\nb: 2\n", "a: \"open\n", "a: 'it''\n",
                                   "a: \"x\\\"\n", "b: [1, 'x\n"}) {
        CAPTURE(text);
        auto const reading = yaml_text(text);
        CHECK_FALSE(reading.node);
        REQUIRE(reading.all().size() == 1);
        CHECK(reading.all()[0].code == "yaml-syntax");
    }
    CHECK(yaml_text("a: 1\nb: 'open\n").reported() == Reported{"yaml-syntax 2:4"});
}

TEST_CASE("the place of a syntax error is in code points") {
    auto const reading = yaml_text("a: 1\n\u00e9\u00e9: x: y\n");
    CHECK(reading.reported() == Reported{"yaml-syntax 2:6"});
}

TEST_CASE("a file without content is refused") {
    for (auto const* text : {"", " ", "\n\n", "\t", "\r\n", "\xEF\xBB\xBF", "\xEF\xBB\xBF\n"}) {
        auto const reading = yaml_text(text);
        CHECK_FALSE(reading.node);
        CHECK(reading.reported() == Reported{"empty-file 1:1"});
    }
}

TEST_CASE("a file of comments only is refused") {
    auto const reading = yaml_text("# one\n# two\n");
    CHECK_FALSE(reading.node);
    CHECK(reading.reported() == Reported{"empty-file 1:1"});
    CHECK(reading.all()[0].message.find("comments") != std::string::npos);
}

TEST_CASE("ill-formed UTF-8 is refused at the byte") {
    auto const reading = yaml_text("a: \u00e9\nb: \xff\n");
    CHECK_FALSE(reading.node);
    CHECK(reading.reported() == Reported{"not-utf8 2:4"});
    CHECK(yaml_text("a: \xc0\xaf\n").reported() == Reported{"not-utf8 1:4"});
    CHECK(yaml_text("a: \xed\xa0\x80\n").reported() == Reported{"not-utf8 1:4"});
}

TEST_CASE("a NUL byte is refused at its place") {
    auto const reading = yaml_text(std::string("a: 1\nb: x\0y\n", 12));
    CHECK_FALSE(reading.node);
    CHECK(reading.reported() == Reported{"nul-byte 2:5"});
}

TEST_CASE("more than 64 levels are refused with a message of our own") {
    auto const reading = yaml_text(repeated("[", 65) + repeated("]", 65));
    CHECK_FALSE(reading.node);
    CHECK(reading.reported() == Reported{"too-deep 1:65"});
}

TEST_CASE("3,000 levels end with one message and no crash") {
    for (auto const& text : {repeated("[", 3000), repeated("[", 3000) + repeated("]", 3000),
                             repeated("{a: ", 3000), repeated("- ", 3000) + "x\n"}) {
        auto const reading = yaml_text(text);
        CHECK_FALSE(reading.node);
        REQUIRE(reading.all().size() == 1);
        CHECK(reading.all()[0].code == "too-deep");
        CHECK(reading.all()[0].message.find("64") != std::string::npos);
    }
}

TEST_CASE("more than 16 MiB are refused before any parsing") {
    auto const reading = yaml_text("a: " + std::string(17u << 20, 'x'));
    CHECK_FALSE(reading.node);
    CHECK(reading.reported() == Reported{"too-large 1:1"});
    CHECK(json_text("\"" + std::string(17u << 20, 'x')).reported() == Reported{"too-large 1:1"});
}

TEST_CASE("one bad file gives every problem that can be told") {
    auto const reading = yaml_text("a: &x 1\na: !t 2\nb: *x\n");
    CHECK(reading.reported() ==
          Reported{"yaml-anchor 1:4", "duplicate-key 2:1", "yaml-tag 2:4", "yaml-alias 3:4"});
}
