// SPDX-License-Identifier: MIT
/// tally and constellation: thresholds in tenths, at most as the negation of
/// the next tenth.
#include "questions.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

using Texts = std::vector<std::string>;

TEST_CASE("at least n asks the tally for n, in tenths") {
    CHECK(asked("{ tally: minors, at-least: 3 }") == Texts{"tally 0 >= 30"});
    CHECK(asked("{ tally: majors, at-least: 1 }") == Texts{"tally 1 >= 10"});
    CHECK(asked("{ tally: minors, at-least: 2.5 }") == Texts{"tally 0 >= 25"});
    CHECK(asked("{ tally: minors, at-least: 0.1 }") == Texts{"tally 0 >= 1"});
}

TEST_CASE("at most n is not at least the next tenth") {
    CHECK(asked("{ tally: minors, at-most: 2 }") == Texts{"tally 0 >= 21"});
    CHECK(asked("{ tally: minors, at-most: 0 }") == Texts{"tally 0 >= 1"});
    CHECK(holds("{ tally: minors, at-most: 2 }", {{"tally 0 >= 21", Truth::yes}}) == Truth::no);
    CHECK(holds("{ tally: minors, at-most: 2 }", {{"tally 0 >= 21", Truth::no}}) == Truth::yes);
    CHECK(holds("{ tally: minors, at-most: 2 }", {}) == Truth::unknown);
}

TEST_CASE("a constellation is asked whether its rule is reached") {
    CHECK(asked("{ constellation: pattern }") == Texts{"constellation 0"});
    CHECK(holds("{ constellation: pattern }", {{"constellation 0", Truth::yes}}) == Truth::yes);
}

TEST_CASE("tallies and constellations in words") {
    CHECK(words("{ tally: minors, at-least: 3 }") == "at least 3 minor variants");
    CHECK(words("{ tally: majors, at-most: 2.5 }") == "at most 2.5 major anomalies");
    CHECK(words("{ constellation: pattern }") == "the counting rule of the pattern reached");
}

TEST_CASE("the leaf of a tally has its threshold and direction") {
    auto const at_least = good("{ tally: majors, at-least: 2 }")->leaf();
    CHECK(at_least.kind == Leaf::Kind::tally);
    CHECK(at_least.index == 1);
    CHECK(at_least.threshold == 20);
    CHECK_FALSE(at_least.at_most);
    CHECK(good("{ tally: majors, at-most: 2 }")->leaf().at_most);
    CHECK(good("{ constellation: pattern }")->leaf().kind == Leaf::Kind::constellation);
}

TEST_CASE("a bound that every case reaches is refused") {
    CHECK(refused("{ tally: minors, at-least: 0 }").code == "always-true");
    CHECK(refused("{ tally: minors, at-least: 0.04 }").code == "always-true");
    CHECK(refused("{ tally: minors, at-most: -1 }").code == "always-true");
    CHECK(refused("{ tally: minors, at-least: -3 }").message == "every case reaches this number");
}

TEST_CASE("exactly one bound") {
    CHECK(refused("{ tally: minors }").code == "one-bound");
    CHECK(refused("{ tally: minors, at-least: 1, at-most: 3 }").code == "one-bound");
}

TEST_CASE("unknown names have the nearest beside them") {
    auto const tally = refused("{ tally: minor, at-least: 1 }");
    CHECK(tally.code == "unknown-tally");
    CHECK(tally.help == "did you mean `minors`");
    auto const constellation = refused("{ constellation: patern }");
    CHECK(constellation.code == "unknown-constellation");
    CHECK(constellation.help == "did you mean `pattern`");
}
