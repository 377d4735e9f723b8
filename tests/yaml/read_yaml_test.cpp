// SPDX-License-Identifier: MIT
/// What YAML is accepted, and what tree it becomes.
#include "trees.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

struct Row {
    char const* text;
    char const* tree;
};

std::string place_of(Span const& span) {
    auto const at = span.position();
    return std::to_string(at.line) + ":" + std::to_string(at.column);
}

}  // namespace

TEST_CASE("scalars, lists and maps keep the order written") {
    for (Row const& row : {
             Row{"a", "a"},
             Row{"- a\n- b\n", "[a, b]"},
             Row{"b: 1\na: 2\n", "{b: 1, a: 2}"},
             Row{"{b: 1, a: [x, y]}", "{b: 1, a: [x, y]}"},
             Row{"a:\n  - b: 1\n    c: 2\n  - d\n", "{a: [{b: 1, c: 2}, d]}"},
             Row{"a: {}\nb: []\n", "{a: {}, b: []}"},
             Row{"# comment\na: 1 # more\n", "{a: 1}"},
             Row{"a: 'x'\nb: \"y\"\nc: z\n", "{a: 'x', b: 'y', c: z}"},
             Row{"a: \"tab\\tend\"\n", "{a: 'tab\tend'}"},
             Row{"a: 'it''s'\n", "{a: 'it's'}"},
             Row{"a: one\n  two\n", "{a: one two}"},
             Row{"--- \na: 1\n", "{a: 1}"},
             Row{"---\na: 1\n...\n", "{a: 1}"},
             Row{"a b: c\n", "{a b: c}"},
         }) {
        CAPTURE(std::string(row.text));
        auto const reading = yaml_text(row.text);
        CHECK(reading.tree() == row.tree);
        CHECK(reading.all().empty());
    }
}

TEST_CASE("folded and literal texts") {
    CHECK(yaml_text("a: >\n  one\n  two\n\n  three\n").node->find("a")->text == "one two\nthree\n");
    CHECK(yaml_text("a: |\n  one\n  two\n").node->find("a")->text == "one\ntwo\n");
    CHECK(yaml_text("a: >-\n  one\n  two\n").node->find("a")->text == "one two");
}

TEST_CASE("words that other readers make into something else stay texts") {
    for (auto const* word :
         {"yes", "no",   "on",   "off",   "y",     "n",          "true",     "040",  "0x10", "0o17",
          "1e5", ".nan", ".inf", "-.inf", "1_000", "2031-04-02", "12:30:00", "31.0", "<",    "N"}) {
        CAPTURE(std::string(word));
        auto const reading = yaml_text("a: " + std::string(word) + "\n");
        REQUIRE(reading.node);
        auto const* value = reading.node->find("a");
        REQUIRE(value);
        CHECK(value->is_scalar());
        CHECK(value->text == word);
        CHECK_FALSE(value->quoted);
        CHECK(reading.all().empty());
    }
}

TEST_CASE("quoted texts know that they are quoted") {
    auto const reading = yaml_text("a: 'true'\nb: \"1\"\nc: ''\n");
    for (auto const* key : {"a", "b", "c"}) CHECK(reading.node->find(key)->quoted);
    CHECK(reading.node->find("c")->is_scalar());
    CHECK(reading.node->find("c")->text == "");
}

TEST_CASE("nothing is written in several ways") {
    auto const reading = yaml_text("a:\nb: ~\nc: null\nd: [~]\n");
    REQUIRE(reading.node);
    CHECK(reading.tree() == "{a: null, b: null, c: null, d: [null]}");
    CHECK(reading.all().empty());
}

TEST_CASE("a key without value is placed at the key") {
    auto const reading = yaml_text("first: 1\nempty:\nlast: 2\n");
    REQUIRE(reading.node);
    auto const* empty = reading.node->find("empty");
    REQUIRE(empty);
    CHECK(empty->kind == yaml::Kind::null);
    CHECK(place_of(empty->span) == "2:1");
    CHECK(covered(empty->span) == "empty");
}

TEST_CASE("a key without value at the end of the file is placed at the key") {
    auto const reading = yaml_text("a: 1\n\nempty:\n\n\n");
    CHECK(place_of(reading.node->find("empty")->span) == "3:1");
}

TEST_CASE("a scalar's span covers what is written") {
    auto const reading = yaml_text("key: plain text\n'q k': \"quoted\"\nlist: [a, 'b', c]\n");
    REQUIRE(reading.node);
    CHECK(covered(reading.node->entries[0].key.span) == "key");
    CHECK(covered(reading.node->find("key")->span) == "plain text");
    CHECK(covered(reading.node->entries[1].key.span) == "'q k'");
    CHECK(covered(reading.node->find("q k")->span) == "\"quoted\"");
    auto const& items = reading.node->find("list")->items;
    CHECK(covered(items[0].span) == "a");
    CHECK(covered(items[1].span) == "'b'");
    CHECK(covered(items[2].span) == "c");
}

TEST_CASE("a quoted scalar's span goes from quote to quote") {
    for (std::string const written :
         {"'it''s'", "\"say \\\"x\\\"\"", "''", "\"\"", "'two\n  lines'", "\"a\\nb\"", "'\"'"}) {
        CAPTURE(written);
        auto const reading = yaml_text("v: " + written + "\nw: 'x'\n");
        REQUIRE(reading.node);
        CHECK(reading.all().empty());
        CHECK(covered(reading.node->find("v")->span) == written);
    }
}

TEST_CASE("a quote inside a block or plain text closes nothing and opens nothing") {
    for (std::string const text :
         {"a: |\n  \"hello\n  'x\n", "a: >\n  'hello\n", "a: it's\n", "a: 5'\n", "a: |-\n  'x\n"}) {
        CAPTURE(text);
        auto const reading = yaml_text(text);
        CHECK(reading.node);
        CHECK(reading.all().empty());
    }
}

TEST_CASE("columns are code points") {
    auto const reading = yaml_text("{ \u00e9\u00e9: \u4e2d\u6587, next: x }\n");
    REQUIRE(reading.node);
    CHECK(place_of(reading.node->entries[0].value.span) == "1:7");
    CHECK(place_of(reading.node->entries[1].key.span) == "1:11");
    CHECK(place_of(reading.node->entries[1].value.span) == "1:17");
    CHECK(covered(reading.node->entries[1].value.span) == "x");
}

TEST_CASE("a byte order mark is skipped, and columns stay right") {
    auto const reading = yaml_text(
        "\xEF\xBB\xBF"
        "a: 1\nb: 2\n");
    REQUIRE(reading.node);
    CHECK(reading.tree() == "{a: 1, b: 2}");
    CHECK(covered(reading.node->entries[0].key.span) == "a");
    CHECK(covered(reading.node->find("a")->span) == "1");
    CHECK(covered(reading.node->find("b")->span) == "2");
    CHECK(place_of(reading.node->find("b")->span) == "2:4");
}

TEST_CASE("line ends of either kind give the same tree and places") {
    auto const lf = yaml_text("a: 1\nb:\n  - x\n  - y\n");
    auto const crlf = yaml_text("a: 1\r\nb:\r\n  - x\r\n  - y\r\n");
    REQUIRE(lf.node);
    REQUIRE(crlf.node);
    CHECK(lf.tree() == crlf.tree());
    auto const& one = lf.node->find("b")->items;
    auto const& other = crlf.node->find("b")->items;
    for (std::size_t i = 0; i < 2; ++i) {
        CHECK(place_of(one[i].span) == place_of(other[i].span));
        CHECK(covered(other[i].span) == one[i].text);
    }
    CHECK(place_of(other[1].span) == "4:5");
}

TEST_CASE("a list or map is placed at its first character") {
    auto const reading = yaml_text("a: [x]\nb: {c: d}\ne:\n  - f\n");
    CHECK(place_of(reading.node->find("a")->span) == "1:4");
    CHECK(place_of(reading.node->find("b")->span) == "2:4");
    CHECK(place_of(reading.node->find("e")->span) == "4:3");
}

TEST_CASE("64 levels are read") {
    auto const flow = yaml_text(repeated("[", 64) + repeated("]", 64));
    CHECK(flow.node);
    CHECK(flow.all().empty());
}

TEST_CASE("finding a key") {
    auto const reading = yaml_text("a: 1\nb: 2\n");
    CHECK(reading.node->find("b")->text == "2");
    CHECK(reading.node->find("c") == nullptr);
    CHECK(reading.node->find("A") == nullptr);
    CHECK(reading.node->find("a")->find("x") == nullptr);
}

TEST_CASE("nodes made by hand print like nodes read") {
    auto const made =
        yaml::map({}, {{{"a", {}}, yaml::scalar({"1", {}})},
                       {{"b", {}}, yaml::list({}, {yaml::scalar({"x", {}}), yaml::Node{}})}});
    CHECK(yaml::to_text(made) == "{a: 1, b: [x, null]}");
    CHECK(yaml::to_text(made) == yaml_text("a: 1\nb: [x, ~]\n").tree());
}
