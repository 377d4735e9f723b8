// SPDX-License-Identifier: MIT
/// all, any, none, at-least, absent: strong Kleene tables over every
/// combination of three truths.
#include <algorithm>

#include "questions.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

constexpr Truth truths[] = {Truth::no, Truth::unknown, Truth::yes};

/// What a person who counts on her fingers answers to "at least n of these
/// three".
Truth at_least_of_three(int n, Truth a, Truth b, Truth c) {
    int certain = 0, possible = 0;
    for (auto const t : {a, b, c}) {
        certain += t == Truth::yes ? 1 : 0;
        possible += t != Truth::no ? 1 : 0;
    }
    return certain >= n ? Truth::yes : possible >= n ? Truth::unknown : Truth::no;
}

Truth of_three(std::string const& text, Truth a, Truth b, Truth c) {
    return holds(text, {{"slant", a}, {"fold", b}, {"crease", c}});
}

std::string const three = "[{ present: slant }, { present: fold }, { present: crease }]";

}  // namespace

TEST_CASE("two conditions under all, any and none, all nine combinations") {
    struct Row {
        Truth a, b, all, any, none;
    };
    constexpr auto n = Truth::no, u = Truth::unknown, y = Truth::yes;
    for (auto const& row : {Row{n, n, n, n, y}, Row{n, u, n, u, u}, Row{n, y, n, y, n},
                            Row{u, n, n, u, u}, Row{u, u, u, u, u}, Row{u, y, u, y, n},
                            Row{y, n, n, y, n}, Row{y, u, u, y, n}, Row{y, y, y, y, n}}) {
        CAPTURE(to_text(row.a));
        CAPTURE(to_text(row.b));
        std::map<std::string, Truth> const known{{"slant", row.a}, {"fold", row.b}};
        std::string const two = "[{ present: slant }, { present: fold }]";
        CHECK(holds("{ all: " + two + " }", known) == row.all);
        CHECK(holds("{ any: " + two + " }", known) == row.any);
        CHECK(holds("{ none: " + two + " }", known) == row.none);
    }
}

TEST_CASE("three conditions, all twenty-seven combinations") {
    for (auto const a : truths) {
        for (auto const b : truths) {
            for (auto const c : truths) {
                CAPTURE(to_text(a));
                CAPTURE(to_text(b));
                CAPTURE(to_text(c));
                for (int n = 1; n <= 3; ++n) {
                    auto const text = "{ at-least: " + std::to_string(n) + ", of: " + three + " }";
                    CHECK(of_three(text, a, b, c) == at_least_of_three(n, a, b, c));
                }
                CHECK(of_three("{ all: " + three + " }", a, b, c) == std::min({a, b, c}));
                CHECK(of_three("{ any: " + three + " }", a, b, c) == std::max({a, b, c}));
                CHECK(of_three("{ none: " + three + " }", a, b, c) == !std::max({a, b, c}));
            }
        }
    }
}

TEST_CASE("a single condition in a group is that condition") {
    for (auto const t : truths) {
        CHECK(holds("{ all: [{ present: slant }] }", {{"slant", t}}) == t);
        CHECK(holds("{ any: [{ present: slant }] }", {{"slant", t}}) == t);
        CHECK(holds("{ none: [{ present: slant }] }", {{"slant", t}}) == !t);
        CHECK(holds("{ at-least: 1, of: [{ present: slant }] }", {{"slant", t}}) == t);
        CHECK(holds("{ absent: slant }", {{"slant", t}}) == !t);
    }
}

TEST_CASE(
    "nesting: what is unknown below stays unknown above unless something "
    "settles it") {
    std::string const text =
        "{ all: [{ any: [{ present: slant }, { present: "
        "fold }] }, { none: [{ present: crease }] "
        "}] }";
    CHECK(of_three(text, Truth::yes, Truth::unknown, Truth::no) == Truth::yes);
    CHECK(of_three(text, Truth::unknown, Truth::no, Truth::no) == Truth::unknown);
    CHECK(of_three(text, Truth::unknown, Truth::no, Truth::yes) == Truth::no);
    CHECK(of_three(text, Truth::no, Truth::no, Truth::unknown) == Truth::no);
    CHECK(of_three(text, Truth::yes, Truth::no, Truth::unknown) == Truth::unknown);
}

TEST_CASE("a doubly negated condition is the condition") {
    for (auto const t : truths) {
        CHECK(holds("{ none: [{ absent: slant }] }", {{"slant", t}}) == t);
        CHECK(holds("{ none: [{ none: [{ present: slant }] }] }", {{"slant", t}}) == t);
    }
}

TEST_CASE("learning more never flips a settled condition") {
    std::string const text =
        "{ at-least: 2, of: [{ present: slant }, { absent: "
        "fold }, { any: [{ present: crease }, { "
        "present: slant }] }] }";
    for (auto const a : truths) {
        for (auto const b : truths) {
            for (auto const c : truths) {
                auto const before = of_three(text, a, b, c);
                if (before == Truth::unknown) continue;
                for (auto const later : {Truth::no, Truth::yes}) {
                    if (a == Truth::unknown) CHECK(of_three(text, later, b, c) == before);
                    if (b == Truth::unknown) CHECK(of_three(text, a, later, c) == before);
                    if (c == Truth::unknown) CHECK(of_three(text, a, b, later) == before);
                }
            }
        }
    }
}

TEST_CASE("only none says that it turns its children round") {
    CHECK(good("{ none: [{ present: slant }] }")->negates());
    for (auto const* text : {"{ all: [{ present: slant }] }", "{ any: [{ present: slant }] }",
                             "{ at-least: 1, of: [{ present: slant }] }", "{ present: slant }"}) {
        CAPTURE(text);
        CHECK_FALSE(good(text)->negates());
    }
}

TEST_CASE("children stand in the order of the book, leaves have none") {
    auto const group = good("{ any: [{ present: fold }, { present: slant }] }");
    REQUIRE(group->children().size() == 2);
    CHECK(group->children()[0]->leaf().index == condition_ontology().finding("fold"));
    CHECK(group->children()[1]->leaf().index == condition_ontology().finding("slant"));
    CHECK(group->leaf().kind == Leaf::Kind::none);
    CHECK(group->children()[0]->children().empty());
}
