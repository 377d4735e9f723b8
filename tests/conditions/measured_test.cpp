// SPDX-License-Identifier: MIT
/// measured: z, centile, or a unit that converts to the measure's own.
#include "questions.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

MeasureTest test_of(std::string const& text) {
    Answers answers({});
    compile(good(text), answers);
    REQUIRE(answers.tests.size() == 1);
    return answers.tests.front();
}

}  // namespace

TEST_CASE("a bound in another unit becomes one in the measure's own") {
    CHECK(test_of("{ measured: width, mm: { above: 5 } }").range.low == 5);
    CHECK(test_of("{ measured: width, cm: { above: 0.5 } }").range.low == doctest::Approx(5));
    CHECK(test_of("{ measured: width, in: { below: 1 } }").range.high == doctest::Approx(25.4));
    CHECK(test_of("{ measured: width, cm: { between: [1, 2] } }").range.high ==
          doctest::Approx(20));
    CHECK(test_of("{ measured: rate, /min: { at-least: 60 } }").range.low == 60);
}

TEST_CASE("z and centile are statistics of their own and are not converted") {
    auto const z = test_of("{ measured: width, z: { below: -2 } }");
    CHECK(z.statistic == Statistic::z);
    CHECK(z.range.high == -2);
    CHECK(z.range.high_open);
    auto const centile = test_of("{ measured: width, centile: { at-most: 3 } }");
    CHECK(centile.statistic == Statistic::centile);
    CHECK_FALSE(centile.range.high_open);
    CHECK(test_of("{ measured: width, mm: { above: 5 } }").statistic == Statistic::value);
}

TEST_CASE("measures in words") {
    CHECK(words("{ measured: width, mm: { above: 5 } }") == "width above 5 mm");
    CHECK(words("{ measured: width, cm: { above: 0.5 } }") == "width above 5 mm");
    CHECK(words("{ measured: width, z: { below: -2 } }") == "width below -2 SD");
    CHECK(words("{ measured: width, centile: { at-most: 3 } }") ==
          "width at most 3 on the centiles");
}

TEST_CASE("the leaf names the measure") {
    auto const leaf = good("{ measured: rate, /min: { above: 60 } }")->leaf();
    CHECK(leaf.kind == Leaf::Kind::measure);
    CHECK(leaf.index == condition_ontology().measure("rate"));
}

TEST_CASE("measures that are refused") {
    struct Row {
        char const* text;
        char const* code;
        char const* place;
    };
    for (auto const& [text, code, place] :
         {Row{"{ measured: widht, mm: { above: 5 } }", "unknown-measure", "book.yaml:1:13"},
          Row{"{ measured: width, kg: { above: 5 } }", "bad-unit", "book.yaml:1:20"},
          Row{"{ measured: width, inch: { above: 5 } }", "bad-unit", "book.yaml:1:20"},
          Row{"{ measured: width }", "one-bound", "book.yaml:1:1"},
          Row{"{ measured: width, mm: { above: 5 }, z: { above: 2 } }", "one-bound",
              "book.yaml:1:1"},
          Row{"{ measured: width, mm: 5 }", "wrong-form", "book.yaml:1:24"},
          Row{"{ measured: width, mm: { above: 6, below: 5 } }", "empty-range", "book.yaml:1:24"},
          Row{"{ measured: width, mm: { above: 5 }, norm: nowhere }", "needless-norm",
              "book.yaml:1:44"},
          Row{"{ measured: width, z: { above: 5 }, norm: nowhere }", "unknown-norm",
              "book.yaml:1:43"}}) {
        CAPTURE(text);
        auto const diagnostic = refused(text);
        CHECK(diagnostic.code == code);
        CHECK(diagnostic.span.place() == place);
    }
    CHECK(refused("{ measured: widht, mm: { above: 5 } }").help.find("`width`") !=
          std::string::npos);
}
