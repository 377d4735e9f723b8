// SPDX-License-Identifier: MIT
// Single edits of a condition, counted by hand.
#include <map>

#include "review/mutant.h"
#include "testing.h"
#include "yaml/read.h"

using namespace asterism;

namespace {

yaml::Node tree(std::string const& text) {
    Diagnostics diagnostics;
    auto node = yaml::read_yaml(make_source("c.yaml", text), diagnostics);
    REQUIRE(node);
    return *node;
}

std::map<MutantKind, int> kinds(std::string const& text) {
    std::map<MutantKind, int> result;
    for (auto const& edit : edited(tree(text))) ++result[edit.kind];
    return result;
}

}  // namespace

TEST_CASE("a number moves by one of its last written unit") {
    struct Row {
        char const* text;
        char const* down;
        char const* up;
    };
    for (auto const& [text, down, up] :
         {Row{"3", "2", "4"}, Row{"-2", "-3", "-1"}, Row{"2.5", "2.4", "2.6"},
          Row{"0.05", "0.04", "0.06"}, Row{"24h", "23h", "25h"}, Row{"3d", "2d", "4d"},
          Row{"37w0d", "36w6d", "37w1d"}, Row{"36w6d", "36w5d", "37w0d"}}) {
        CAPTURE(text);
        CHECK(moved(text, -1) == down);
        CHECK(moved(text, 1) == up);
    }
    CHECK(moved("0.0", 1) == "0.1");
    CHECK(moved("-0.1", 1) == "0.0");
    CHECK_FALSE(moved("0h", -1));
    CHECK_FALSE(moved("crease", 1));
}

TEST_CASE("every node is negated, every member of a group left out, every bound moved") {
    using K = MutantKind;
    CHECK(kinds("{ present: a }") == std::map<K, int>{{K::negated, 1}});
    CHECK(kinds("{ all: [ { present: a }, { any: [ { present: b }, { absent: c } ] } ] }") ==
          std::map<K, int>{{K::negated, 5}, {K::dropped, 4}});
    CHECK(kinds("{ at-least: 2, of: [ { present: a }, { present: b }, { present: c } ] }") ==
          std::map<K, int>{{K::negated, 4}, {K::dropped, 3}, {K::threshold, 2}});
    CHECK(kinds("{ tally: minors, at-least: 3 }") ==
          std::map<K, int>{{K::negated, 1}, {K::threshold, 2}});
    CHECK(kinds("{ measured: width, mm: { between: [2, 4] } }") ==
          std::map<K, int>{{K::negated, 1}, {K::threshold, 4}});
    CHECK(kinds("{ age: { at-least: 24h, below: 3d } }") ==
          std::map<K, int>{{K::negated, 1}, {K::threshold, 4}});
    CHECK(kinds("{ none: [ { present: a } ] }") == std::map<K, int>{{K::negated, 2}});
}

TEST_CASE("an edit changes its own place and nothing else") {
    auto const all = edited(tree("{ all: [ { present: a }, { tally: m, at-least: 2 } ] }"));
    std::vector<std::string> texts;
    for (auto const& edit : all) texts.push_back(yaml::to_text(edit.condition));
    auto const has = [&](std::string const& text) {
        auto const wanted = yaml::to_text(tree(text));
        return std::count(texts.begin(), texts.end(), wanted) == 1;
    };
    CHECK(texts.size() == 7);
    CHECK(has("{ none: [ { all: [ { present: a }, { tally: m, at-least: 2 } ] } ] }"));
    CHECK(has("{ all: [ { none: [ { present: a } ] }, { tally: m, at-least: 2 } ] }"));
    CHECK(has("{ all: [ { present: a }, { none: [ { tally: m, at-least: 2 } ] } ] }"));
    CHECK(has("{ all: [ { tally: m, at-least: 2 } ] }"));
    CHECK(has("{ all: [ { present: a } ] }"));
    CHECK(has("{ all: [ { present: a }, { tally: m, at-least: 1 } ] }"));
    CHECK(has("{ all: [ { present: a }, { tally: m, at-least: 3 } ] }"));
}
