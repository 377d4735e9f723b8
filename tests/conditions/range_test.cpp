// SPDX-License-Identifier: MIT
/// Bounds: what lies inside when a value is known only as a band, how bounds
/// are read and printed.
#include "conditions/range.h"

#include "questions.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

Range range_of(std::string const& text, BoundSyntax const& syntax = number_bounds()) {
    Diagnostics diagnostics;
    auto const node = yaml::read_yaml(make_source("b.yaml", text), diagnostics);
    REQUIRE(node);
    Range range;
    CAPTURE(text);
    CHECK(read_range(*node, syntax, range, diagnostics));
    CHECK(diagnostics.empty());
    return range;
}

Diagnostic bad_range(std::string const& text, BoundSyntax const& syntax = number_bounds()) {
    Diagnostics diagnostics;
    auto const node = yaml::read_yaml(make_source("b.yaml", text), diagnostics);
    REQUIRE(node);
    Range range;
    CAPTURE(text);
    CHECK_FALSE(read_range(*node, syntax, range, diagnostics));
    REQUIRE(diagnostics.has_errors());
    return diagnostics.sorted().front();
}

}  // namespace

TEST_CASE("a value or a band of values against each kind of bound") {
    constexpr auto n = Truth::no, u = Truth::unknown, y = Truth::yes;
    struct Row {
        char const* bounds;
        double from, to;
        Truth inside;
    };
    for (auto const& row : {
             Row{"{ above: 5 }", 5, 5, n},
             Row{"{ above: 5 }", 5.1, 5.1, y},
             Row{"{ above: 5 }", 4.5, 5, n},
             Row{"{ above: 5 }", 4.5, 5.5, u},
             Row{"{ above: 5 }", 5, 6, u},
             Row{"{ at-least: 5 }", 5, 5, y},
             Row{"{ at-least: 5 }", 4.9, 4.9, n},
             Row{"{ at-least: 5 }", 4.5, 5, u},
             Row{"{ at-least: 5 }", 5, 6, y},
             Row{"{ below: 5 }", 5, 5, n},
             Row{"{ below: 5 }", 4.9, 4.9, y},
             Row{"{ below: 5 }", 5, 6, n},
             Row{"{ below: 5 }", 4, 5, u},
             Row{"{ at-most: 5 }", 5, 5, y},
             Row{"{ at-most: 5 }", 5, 6, u},
             Row{"{ at-most: 5 }", 5.1, 6, n},
             Row{"{ between: [3, 5] }", 3, 5, y},
             Row{"{ between: [3, 5] }", 2.9, 2.9, n},
             Row{"{ between: [3, 5] }", 5.1, 5.1, n},
             Row{"{ between: [3, 5] }", 2, 3, u},
             Row{"{ between: [3, 5] }", 2, 6, u},
             Row{"{ above: 3, below: 5 }", 3, 5, u},
             Row{"{ above: 3, below: 5 }", 3.1, 4.9, y},
             Row{"{ above: 3, at-most: 5 }", 5, 5, y},
         }) {
        CAPTURE(row.bounds);
        CAPTURE(row.from);
        CAPTURE(row.to);
        CHECK(range_of(row.bounds).contains(row.from, row.to) == row.inside);
    }
}

TEST_CASE("a narrower band never contradicts a wider one") {
    auto const range = range_of("{ above: 2, at-most: 6 }");
    for (double low = 0; low <= 8; low += 0.5) {
        for (double high = low; high <= 8; high += 0.5) {
            auto const wide = range.contains(low, high);
            if (wide == Truth::unknown) continue;
            CHECK(range.contains(low, low) == wide);
            CHECK(range.contains(high, high) == wide);
            CHECK(range.contains((low + high) / 2, (low + high) / 2) == wide);
        }
    }
}

TEST_CASE("bounds of age are hours, bounds of gestation days") {
    CHECK(range_of("{ below: 24h }", duration_bounds()).high == 24);
    CHECK(range_of("{ below: 3d }", duration_bounds()).high == 72);
    CHECK(range_of("{ at-least: 2w }", duration_bounds()).low == 336);
    CHECK(range_of("{ below: 37w0d }", gestation_bounds()).high == 259);
    CHECK(range_of("{ between: [32w0d, 36w6d] }", gestation_bounds()).low == 224);
}

TEST_CASE("bounds in words") {
    auto const in_words = [](char const* text, BoundSyntax const& syntax) {
        return describe(range_of(text, syntax), syntax);
    };
    CHECK(in_words("{ above: 5 }", number_bounds()) == "above 5");
    CHECK(in_words("{ at-least: 2.5 }", number_bounds()) == "at least 2.5");
    CHECK(in_words("{ below: -2 }", number_bounds()) == "below -2");
    CHECK(in_words("{ at-most: 0 }", number_bounds()) == "at most 0");
    CHECK(in_words("{ between: [3, 5] }", number_bounds()) == "from 3 to 5");
    CHECK(in_words("{ at-least: 3, at-most: 5 }", number_bounds()) == "from 3 to 5");
    CHECK(in_words("{ at-least: 3, below: 5 }", number_bounds()) == "at least 3 and below 5");
    CHECK(in_words("{ above: 3, at-most: 5 }", number_bounds()) == "above 3 and at most 5");
    CHECK(in_words("{ below: 24h }", duration_bounds()) == "below 24h");
    CHECK(in_words("{ at-least: 14d }", duration_bounds()) == "at least 2w");
    CHECK(in_words("{ below: 37w0d }", gestation_bounds()) == "below 37w0d");
}

TEST_CASE("bounds that are refused") {
    CHECK(bad_range("{ above: 5, below: 5 }").code == "empty-range");
    CHECK(bad_range("{ above: 5, below: 4 }").code == "empty-range");
    CHECK(bad_range("{ above: 5, at-most: 5 }").code == "empty-range");
    CHECK(bad_range("{ between: [5, 3] }").code == "empty-range");
    CHECK(bad_range("{ between: [5] }").code == "wrong-form");
    CHECK(bad_range("{ between: 5 }").code == "wrong-form");
    CHECK(bad_range("{ over: 5 }").code == "unknown-key");
    CHECK(bad_range("{ belw: 5 }").help.find("`below`") != std::string::npos);
    CHECK(bad_range("{}").code == "wrong-form");
    CHECK(bad_range("[5]").code == "wrong-form");
    CHECK(bad_range("{ above: [5] }").code == "wrong-form");
}

TEST_CASE("a bound is a plain decimal number") {
    for (auto const* text : {"{ above: 0x10 }", "{ above: .nan }", "{ above: .inf }",
                             "{ above: 1e3 }", "{ above: five }", "{ above: 5 mm }"}) {
        CAPTURE(text);
        CHECK(bad_range(text).code == "bad-bound");
    }
    CHECK(range_of("{ above: 040 }").low == 40);
}

TEST_CASE("ages and gestations are written with their units, gestation to the day") {
    CHECK(bad_range("{ below: 24 }", duration_bounds()).code == "bad-bound");
    CHECK(bad_range("{ below: 37.0 }", gestation_bounds()).code == "bad-bound");
    auto const weeks = bad_range("{ below: 37w }", gestation_bounds());
    CHECK(weeks.message == "`37w` is not understood: a bound needs weeks and days");
}

TEST_CASE("age, gestation and sex as conditions") {
    CHECK(words("{ age: { below: 24h } }") == "age below 24h");
    CHECK(words("{ gestation: { at-least: 37w0d } }") == "gestation at least 37w0d");
    CHECK(words("{ sex: female }") == "sex female");
    CHECK(good("{ age: { below: 24h } }")->leaf().kind == Leaf::Kind::age);
    CHECK(good("{ gestation: { below: 37w0d } }")->leaf().kind == Leaf::Kind::gestation);
    CHECK(good("{ sex: male }")->leaf().kind == Leaf::Kind::sex);
    CHECK(holds("{ sex: male }", {{"male", Truth::yes}}) == Truth::yes);
    CHECK(refused("{ sex: undetermined }").code == "unknown-value");
    CHECK(refused("{ age: 24h }").code == "wrong-form");
}
