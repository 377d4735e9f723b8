// SPDX-License-Identifier: MIT
/// The JSON reader gives the same tree under the same limits.
#include "trees.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

struct Row {
    std::string text;
    std::string tree;
};

std::string place_of(Span const& span) {
    auto const at = span.position();
    return std::to_string(at.line) + ":" + std::to_string(at.column);
}

Reading any_text(std::string name, std::string text) {
    Reading reading;
    reading.node =
        yaml::read_any(make_source(std::move(name), std::move(text)), reading.diagnostics);
    return reading;
}

}  // namespace

TEST_CASE("JSON values become the same tree as YAML") {
    for (Row const& row : {
             Row{"{}", "{}"},
             Row{"[]", "[]"},
             Row{"\"a\"", "'a'"},
             Row{"null", "null"},
             Row{"true", "true"},
             Row{" [ true , false ] ", "[true, false]"},
             Row{R"({"b": 1, "a": [null, "x"]})", "{b: 1, a: [null, 'x']}"},
             Row{R"({"a": {"b": {"c": []}}})", "{a: {b: {c: []}}}"},
             Row{R"(["\u00e9\n"])", "['\u00e9\n']"},
             Row{R"(["[{,:"])", "['[{,:']"},
         }) {
        CAPTURE(row.text);
        auto const reading = json_text(row.text);
        CHECK(reading.tree() == row.tree);
        CHECK(reading.all().empty());
    }
}

TEST_CASE("numbers keep their text and so their precision") {
    for (auto const* number : {"31.0", "0", "-2", "31.00", "1e5", "1E-3", "0.10",
                               "123456789012345678901234567890", "18446744073709551615"}) {
        auto const text = std::string(number);
        CAPTURE(text);
        for (auto const& reading : {json_text(text), json_text("[" + text + "]"),
                                    json_text("{\"a\":" + text + "}"), json_text(text + " \n")}) {
            REQUIRE(reading.node);
            auto const& node = reading.node->is_list()  ? reading.node->items[0]
                               : reading.node->is_map() ? *reading.node->find("a")
                                                        : *reading.node;
            CHECK(node.text == text);
            CHECK(covered(node.span) == text);
            CHECK_FALSE(node.quoted);
        }
    }
}

TEST_CASE("texts are quoted, so never a number or a boolean") {
    auto const reading = json_text(R"({"a": "1", "b": true})");
    CHECK(reading.node->find("a")->quoted);
    CHECK_FALSE(reading.node->find("b")->quoted);
}

TEST_CASE("every value knows its place") {
    auto const reading =
        json_text("{\n  \"id\": \"x\",\n  \"list\": [1, \"two\", null, true],\n  \"m\": {}\n}\n");
    REQUIRE(reading.node);
    CHECK(place_of(reading.node->span) == "1:1");
    CHECK(covered(reading.node->entries[0].key.span) == "\"id\"");
    CHECK(covered(reading.node->find("id")->span) == "\"x\"");
    auto const& list = *reading.node->find("list");
    CHECK(place_of(list.span) == "3:11");
    CHECK(covered(list.span) == "[1, \"two\", null, true]");
    CHECK(place_of(list.items[0].span) == "3:12");
    CHECK(covered(list.items[0].span) == "1");
    CHECK(covered(list.items[1].span) == "\"two\"");
    CHECK(covered(list.items[3].span) == "true");
    CHECK(place_of(list.items[3].span) == "3:28");
    CHECK(place_of(reading.node->find("m")->span) == "4:8");
    CHECK(covered(reading.node->find("m")->span) == "{}");
}

TEST_CASE("JSON columns are code points") {
    auto const reading = json_text("{\"\u00e9\u00e9\": \"\u4e2d\", \"n\": 5}");
    CHECK(place_of(reading.node->find("n")->span) == "1:18");
    CHECK(covered(reading.node->find("n")->span) == "5");
}

TEST_CASE("a null in a map is placed at its key") {
    auto const reading = json_text("{\n \"a\": 1,\n \"b\": null\n}");
    CHECK(place_of(reading.node->find("b")->span) == "3:2");
}

TEST_CASE("duplicate keys of JSON are shown at both places") {
    auto const reading = json_text("{\"a\": 1,\n \"b\": 2,\n \"a\": 3}");
    auto const all = reading.all();
    REQUIRE(all.size() == 1);
    CHECK(all[0].code == "duplicate-key");
    CHECK(all[0].span.place() == "t.json:3:2");
    REQUIRE(all[0].related.size() == 1);
    CHECK(all[0].related[0].span.place() == "t.json:1:2");
    CHECK(reading.tree() == "{a: 1, b: 2}");
}

TEST_CASE("keys that only the escapes tell apart are duplicates") {
    CHECK(json_text(R"({"a": 1, "\u0061": 2})").reported() == Reported{"duplicate-key 1:10"});
}

TEST_CASE("what is no JSON is refused with one syntax error") {
    for (std::string const text :
         {"{",      "[1, 2",      "[1,]", "{\"a\": 1,}", "{a: 1}",    "{'a': 1}",      "[1] x",
          "{} {}",  "[01]",       "[.5]", "[+1]",        "[NaN]",     "[Infinity]",    "[0x10]",
          "\"open", "[\"a\nb\"]", "nul",  "// c\n[]",    "[\"\\x\"]", "[\"\\ud800\"]", "{\"a\"}",
          "]"}) {
        CAPTURE(text);
        auto const reading = json_text(text);
        CHECK_FALSE(reading.node);
        auto const all = reading.all();
        REQUIRE(all.size() == 1);
        CHECK(all[0].code == "json-syntax");
        std::string const start = "JSON cannot be read: ";
        CHECK(all[0].message.substr(0, start.size()) == start);
        CHECK(all[0].message.size() > start.size() + 5);
        CHECK(all[0].message.find("parse_error.") == std::string::npos);
    }
}

TEST_CASE("a trailing comma is placed on its line") {
    auto const all = json_text("{\n  \"a\": 1,\n}\n").all();
    REQUIRE(all.size() == 1);
    CHECK(all[0].span.position().line == 3);
    CHECK(all[0].span.position().column == 1);
}

TEST_CASE("JSON texts are checked like YAML texts") {
    CHECK(json_text("").reported() == Reported{"empty-file 1:1"});
    CHECK(json_text(" \n").reported() == Reported{"empty-file 1:1"});
    CHECK(json_text("[\"\xff\"]").reported() == Reported{"not-utf8 1:3"});
    CHECK(json_text(std::string("[\0]", 3)).reported() == Reported{"nul-byte 1:2"});
}

TEST_CASE("JSON may be 64 levels deep and no deeper") {
    CHECK(json_text(repeated("[", 64) + repeated("]", 64)).all().empty());
    CHECK(json_text(repeated("[", 65) + repeated("]", 65)).reported() == Reported{"too-deep 1:65"});
    CHECK(json_text(repeated("[", 100000)).reported() == Reported{"too-deep 1:65"});
    CHECK_FALSE(json_text(repeated("{\"a\":", 3000)).node);
}

TEST_CASE("a byte order mark before JSON is skipped, and places stay right") {
    auto const reading = json_text("\xEF\xBB\xBF{\"a\": 7}");
    REQUIRE(reading.node);
    CHECK(reading.tree() == "{a: 7}");
    CHECK(covered(reading.node->find("a")->span) == "7");
}

TEST_CASE("the form is chosen by the first character and the name") {
    CHECK(any_text("x.json", "{\"a\": 1}").tree() == "{a: 1}");
    CHECK(any_text("-", "  [\"a\"]").tree() == "['a']");
    CHECK(any_text("x.yaml", "{a: 1}").tree() == "{a: 1}");
    CHECK(any_text("x.yml", "{a: 1}").tree() == "{a: 1}");
    CHECK(any_text("-", "a: 1\n").tree() == "{a: 1}");
    CHECK(any_text("x.json", "{a: 1}").reported().at(0).substr(0, 11) == "json-syntax");
    CHECK(any_text("", "[x]").reported().at(0).substr(0, 11) == "json-syntax");
    CHECK(any_text("empty", "").reported() == Reported{"empty-file 1:1"});
}
