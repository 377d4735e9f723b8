// SPDX-License-Identifier: MIT
/// Places: lines and columns in code points, whatever the line ends, and spans that name them.
#include "base/source.h"

#include "testing.h"

using namespace asterism;

namespace {

struct Place {
    char const* text;
    std::uint32_t offset;
    std::uint32_t line;
    std::uint32_t column;
};

Span span_in(SourcePtr const& source, std::uint32_t begin, std::uint32_t end) {
    return {source, begin, end};
}

}  // namespace

TEST_CASE("a byte offset becomes a line and a column in code points") {
    for (Place const& place : {
             Place{"", 0, 1, 1},
             Place{"abc", 0, 1, 1},
             Place{"abc", 2, 1, 3},
             Place{"abc", 3, 1, 4},
             Place{"abc", 99, 1, 4},
             Place{"a\nb", 1, 1, 2},
             Place{"a\nb", 2, 2, 1},
             Place{"a\n", 2, 2, 1},
             Place{"a\r\nb", 3, 2, 1},
             Place{"a\r\nbc", 4, 2, 2},
             Place{"\n\n\nx", 3, 4, 1},
             Place{"é:x", 2, 1, 2},            // two bytes, one column
             Place{"é:x", 3, 1, 3},            // after the accent
             Place{"\u4e2d\u6587:", 6, 1, 3},  // three bytes each
             Place{"\U0001F476b", 4, 1, 2},    // four bytes
             Place{"e\u0301x", 3, 1, 3},       // a combining accent is a code point of its own
             Place{"ä\nöü", 3, 2, 1},
             Place{"ä\nöü", 5, 2, 2},
         }) {
        CAPTURE(std::string(place.text));
        CAPTURE(place.offset);
        auto const at = Source("t", place.text).position(place.offset);
        CHECK(at.line == place.line);
        CHECK(at.column == place.column);
    }
}

TEST_CASE("a line is given without its end") {
    Source const source("t", "one\ntwo\r\n\nfour");
    CHECK(source.line(1) == "one");
    CHECK(source.line(2) == "two");
    CHECK(source.line(3) == "");
    CHECK(source.line(4) == "four");
}

TEST_CASE("there is no line 0 and none past the end") {
    Source const source("t", "one\ntwo");
    CHECK(source.line(0) == "");
    CHECK(source.line(3) == "");
    CHECK(source.line(4000000000u) == "");
}

TEST_CASE("a carriage return inside a line belongs to the line") {
    CHECK(Source("t", "a\rb\r\nc").line(1) == "a\rb");
    CHECK(Source("t", "a\rb\r\nc").line(2) == "c");
}

TEST_CASE("a final line end opens an empty line") {
    Source const source("t", "one\n");
    CHECK(source.line(1) == "one");
    CHECK(source.line(2) == "");
    CHECK(source.line_start(1) == 4);
}

TEST_CASE("the start of a line is counted from 0 and clamped to the end") {
    Source const source("t", "ab\ncd\r\nef");
    CHECK(source.line_start(0) == 0);
    CHECK(source.line_start(1) == 3);
    CHECK(source.line_start(2) == 7);
    CHECK(source.line_start(3) == 9);
    CHECK(source.line_start(77) == 9);
}

TEST_CASE("a source keeps its name and its whole text") {
    auto const source = make_source("rules/a.yaml", std::string("a\0b", 3));
    CHECK(source->name() == "rules/a.yaml");
    CHECK(source->text().size() == 3);
}

TEST_CASE("a span prints name, line and column") {
    auto const source = make_source("case.yaml", "id: 1\nsex: é girl\n");
    CHECK(span_in(source, 0, 2).place() == "case.yaml:1:1");
    CHECK(span_in(source, 6, 9).place() == "case.yaml:2:1");
    CHECK(span_in(source, 14, 18).place() == "case.yaml:2:8");
    CHECK(span_in(source, 14, 18).known());
}

TEST_CASE("a default span points nowhere and prints nothing") {
    Span const nowhere;
    CHECK_FALSE(nowhere.known());
    CHECK(nowhere.place() == "");
    CHECK(nowhere.position().line == 1);
    CHECK(nowhere.position().column == 1);
}

TEST_CASE("spans are ordered by source name, then by offset, then by end") {
    auto const a = make_source("a", "xxxxxxxx");
    auto const b = make_source("b", "xxxxxxxx");
    CHECK(before(span_in(a, 5, 6), span_in(b, 0, 1)));
    CHECK_FALSE(before(span_in(b, 0, 1), span_in(a, 5, 6)));
    CHECK(before(span_in(a, 1, 2), span_in(a, 3, 4)));
    CHECK(before(span_in(a, 1, 2), span_in(a, 1, 3)));
    CHECK_FALSE(before(span_in(a, 1, 2), span_in(a, 1, 2)));
    CHECK(before(Span{}, span_in(a, 0, 1)));
}

TEST_CASE("offsets are ordered as numbers, not as texts") {
    auto const source = make_source("a", std::string(200, 'x'));
    CHECK(before(span_in(source, 9, 10), span_in(source, 100, 101)));
}

TEST_CASE("a word is empty when its text is") {
    CHECK(Word{}.empty());
    CHECK_FALSE(Word{"x", {}}.empty());
}
