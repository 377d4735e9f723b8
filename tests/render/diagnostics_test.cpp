// SPDX-License-Identifier: MIT
/// What a person reads when something she wrote is wrong: whole messages,
/// pinned.
#include <nlohmann/json.hpp>

#include "render/diagnostics_text.h"
#include "render/json.h"
#include "testing.h"

using namespace asterism;

namespace {

Span span_of(SourcePtr const& source, std::string const& text) {
    auto const at = source->text().find(text);
    REQUIRE(at != std::string_view::npos);
    auto const begin = static_cast<std::uint32_t>(at);
    return {source, begin, begin + static_cast<std::uint32_t>(text.size())};
}

std::string one(Span span, std::string message, std::string help = {}) {
    Diagnostics diagnostics;
    diagnostics.error("code", std::move(span), std::move(message), std::move(help));
    return diagnostics_text(diagnostics);
}

std::vector<std::string> lines_of(std::string const& text) {
    std::vector<std::string> lines;
    std::size_t begin = 0;
    while (begin < text.size()) {
        auto const end = text.find('\n', begin);
        lines.push_back(text.substr(begin, end - begin));
        begin = end + 1;
    }
    return lines;
}

/// How many columns stand before the caret, and how many carets.
std::pair<std::size_t, std::size_t> caret(std::string const& text) {
    auto const line = lines_of(text).at(2);
    auto const first = line.find('^');
    return {first, line.size() - first};
}

}  // namespace

TEST_CASE("place, message, code, the line, a caret, help") {
    auto const source = make_source("baby.yaml", "sex: male\nfindings: [palmer crease]\n");
    CHECK(one(span_of(source, "palmer crease"), "unknown finding `palmer crease`",
              "did you mean `palmar crease`") ==
          "baby.yaml:2:12: error: unknown finding `palmer crease` [code]\n"
          "  findings: [palmer crease]\n"
          "             ^^^^^^^^^^^^^\n"
          "  help: did you mean `palmar crease`\n");
}

TEST_CASE("related places follow as notes") {
    auto const source = make_source("b.yaml", "findings: [cleft]\nabsent: [web]\n");
    Diagnostics diagnostics;
    diagnostics.add({"contradiction",
                     Severity::error,
                     "stated twice",
                     span_of(source, "cleft"),
                     {{span_of(source, "web"), "stated absent here"}},
                     "keep one of the two"});
    CHECK(diagnostics_text(diagnostics) ==
          "b.yaml:1:12: error: stated twice [contradiction]\n"
          "  findings: [cleft]\n"
          "             ^^^^^\n"
          "b.yaml:2:10: note: stated absent here\n"
          "  absent: [web]\n"
          "           ^^^\n"
          "  help: keep one of the two\n");
}

TEST_CASE(
    "warnings and notes say so; several diagnostics come in the order of "
    "the file") {
    auto const source = make_source("b.yaml", "one\ntwo\n");
    Diagnostics diagnostics;
    diagnostics.warning("w", span_of(source, "two"), "second");
    diagnostics.note("n", span_of(source, "one"), "first");
    CHECK(diagnostics_text(diagnostics) ==
          "b.yaml:1:1: note: first [n]\n  one\n  ^^^\n"
          "b.yaml:2:1: warning: second [w]\n  two\n  ^^^\n");
}

TEST_CASE(
    "without a place there is only the sentence; without a text no empty "
    "excerpt") {
    CHECK(one({}, "lost") == "error: lost [code]\n");
    CHECK(one({make_source("gone.yaml", ""), 0, 0}, "the file cannot be read") ==
          "gone.yaml:1:1: error: the file cannot be read [code]\n");
    CHECK(diagnostics_text(Diagnostics{}) == "");
}

TEST_CASE(
    "the caret stands under wide characters, accents and after tabs made "
    "visible") {
    auto const wide = make_source("w.yaml", "\u4e2d\u6587: bad\n");
    CHECK(caret(one(span_of(wide, "bad"), "m")) == std::pair<std::size_t, std::size_t>{8, 3});
    CHECK(one(span_of(wide, "bad"), "m").find("w.yaml:1:5:") == 0);
    auto const accent = make_source("a.yaml", "caf\u00e9: bad\n");
    CHECK(caret(one(span_of(accent, "bad"), "m")) == std::pair<std::size_t, std::size_t>{8, 3});
    auto const combining = make_source("c.yaml", "cafe\u0301: bad\n");
    CHECK(caret(one(span_of(combining, "bad"), "m")) == std::pair<std::size_t, std::size_t>{8, 3});
    auto const tab = make_source("t.yaml", "a:\tbad\n");
    CHECK(one(span_of(tab, "bad"), "m").find("a:\\x09bad") != std::string::npos);
    CHECK(caret(one(span_of(tab, "bad"), "m")) == std::pair<std::size_t, std::size_t>{8, 3});
}

TEST_CASE("wide text under the caret has as many carets as columns") {
    auto const source = make_source("w.yaml", "a: \u4e2d\u6587\n");
    CHECK(caret(one(span_of(source, "\u4e2d\u6587"), "m")) ==
          std::pair<std::size_t, std::size_t>{5, 4});
}

TEST_CASE("an empty span and one at the end of the line still have a caret") {
    auto const source = make_source("e.yaml", "abc\ndef\n");
    CHECK(caret(one({source, 1, 1}, "m")) == std::pair<std::size_t, std::size_t>{3, 1});
    CHECK(caret(one({source, 3, 3}, "m")) == std::pair<std::size_t, std::size_t>{5, 1});
    CHECK(lines_of(one({source, 8, 8}, "m")).front() == "e.yaml:3:1: error: m [code]");
}

TEST_CASE("a span over several lines is underlined on its first only") {
    auto const source = make_source("s.yaml", "abc: [one,\n  two]\n");
    auto const text = one({source, 5, 17}, "m");
    CHECK(lines_of(text).size() == 3);
    CHECK(caret(text) == std::pair<std::size_t, std::size_t>{7, 5});
}

TEST_CASE("a long line is cut around the caret, wherever that is") {
    std::string const filler(5000, 'x');
    for (std::size_t const at : {0u, 60u, 2500u, 4990u}) {
        auto text = filler;
        text.replace(at, 3, "BAD");
        auto const source = make_source("l.yaml", text + "\n");
        auto const lines = lines_of(one(span_of(source, "BAD"), "m"));
        CAPTURE(at);
        REQUIRE(lines.size() == 3);
        CHECK(lines[1].size() <= 122);
        auto const bad = lines[1].find("BAD");
        REQUIRE(bad != std::string::npos);
        CHECK(lines[2].find("^^^") == bad);
    }
}

TEST_CASE("a long line of wide characters is not cut inside one") {
    std::string text;
    for (int i = 0; i < 400; ++i) text += "\u4e2d";
    auto const source = make_source("l.yaml", text + " BAD " + text + "\n");
    auto const shown = lines_of(one(span_of(source, "BAD"), "m")).at(1);
    auto lead = shown.substr(shown.find("...") + 3);
    CHECK(lead.find("\u4e2d") == 0);
    CHECK(shown.find("BAD") != std::string::npos);
}

TEST_CASE(
    "escape sequences, bidirectional marks and NUL from outside are "
    "inert everywhere") {
    std::string nasty = "\x1b[31mred\x07 \u202egnp\u2066 \xc2\x9b";
    nasty += '\0';
    auto const source = make_source("x\x1b[2J.yaml", "k: " + nasty + "\n");
    Diagnostic one;
    one.code = "c";
    one.message = "message `" + nasty + "`";
    one.span = {source, 3, 6};
    one.related.resize(1);
    one.related[0].span = {source, 0, 1};
    one.related[0].message = nasty;
    one.help = nasty;
    Diagnostics diagnostics;
    diagnostics.add(one);
    auto const text = diagnostics_text(diagnostics);
    for (char const bad : {'\x1b', '\x07', '\0'}) CHECK(text.find(bad) == std::string::npos);
    CHECK(text.find("\u202e") == std::string::npos);
    CHECK(text.find("\u2066") == std::string::npos);
    CHECK(text.find("\xc2\x9b") == std::string::npos);
    CHECK(text.find("\\x1b[31mred") != std::string::npos);
    CHECK(text.find("\\u202e") != std::string::npos);
}

TEST_CASE("as JSON: code, severity, message, place, related, help; nothing empty") {
    auto const source = make_source("b.yaml", "findings: [caf\u00e9, bad]\n");
    Diagnostics diagnostics;
    diagnostics.add({"c",
                     Severity::error,
                     "m",
                     span_of(source, "bad"),
                     {{span_of(source, "findings"), "here"}},
                     "h"});
    diagnostics.warning("w", {}, "nowhere");
    auto const json = diagnostics_json(diagnostics);
    REQUIRE(json.size() == 2);
    CHECK(json[0] ==
          nlohmann::ordered_json{{"code", "w"}, {"severity", "warning"}, {"message", "nowhere"}});
    CHECK(json[1]["file"] == "b.yaml");
    CHECK(json[1]["line"] == 1);
    CHECK(json[1]["column"] == 18);
    CHECK(json[1]["help"] == "h");
    REQUIRE(json[1]["related"].size() == 1);
    CHECK(json[1]["related"][0]["message"] == "here");
    CHECK(json[1]["related"][0]["column"] == 1);
}

TEST_CASE("ill-formed UTF-8 from outside never breaks the JSON") {
    auto const source = make_source("b\xff.yaml", "k: \xff\n");
    Diagnostics diagnostics;
    diagnostics.error("not-utf8", {source, 3, 4}, "byte `\xff`");
    auto const text = json_text(diagnostics_json(diagnostics));
    CHECK(nlohmann::json::accept(text));
    CHECK(text.back() == '\n');
}
