// SPDX-License-Identifier: MIT
#include "norms/band.h"

#include <limits>

#include "testing.h"

using namespace asterism::norms;

TEST_CASE("a point holds one value and a cover holds both of its bands") {
    CHECK(is_point(point(-2)));
    CHECK_FALSE(is_point({-2.1, -2}));
    CHECK(cover(point(1), point(-1)) == Band{-1, 1});
    CHECK(cover({0, 5}, {1, 2}) == Band{0, 5});
    CHECK(widen({1, 2}, 0.5) == Band{0.5, 2.5});
}

TEST_CASE("a band on one side of a cut-off decides, a band across it does not") {
    CHECK(lies_below({-2.9, -2.1}, -2) == true);
    CHECK(lies_below({-1.9, -1.1}, -2) == false);
    CHECK(lies_below({-2.1, -1.9}, -2) == std::nullopt);
    CHECK(lies_above({2.1, 2.9}, 2) == true);
    CHECK(lies_above({1.1, 1.9}, 2) == false);
    CHECK(lies_above({1.9, 2.1}, 2) == std::nullopt);
}

TEST_CASE("below and above leave the cut-off itself out, at most and at least take it in") {
    CHECK(lies_below(point(2.5), 2.5) == false);
    CHECK(lies_above(point(2.5), 2.5) == false);
    CHECK(lies_at_most(point(2.5), 2.5) == true);
    CHECK(lies_at_least(point(2.5), 2.5) == true);
}

TEST_CASE("a band that ends at the cut-off is judged by what its end may be") {
    CHECK(lies_below({2, 2.5}, 2.5) == std::nullopt);
    CHECK(lies_below({2.5, 3}, 2.5) == false);
    CHECK(lies_at_most({2, 2.5}, 2.5) == true);
    CHECK(lies_at_most({2.5, 3}, 2.5) == std::nullopt);
    CHECK(lies_at_least({2.5, 3}, 2.5) == true);
    CHECK(lies_at_least({2, 2.5}, 2.5) == std::nullopt);
}

TEST_CASE("an open end counts as beyond every cut-off") {
    constexpr auto infinity = std::numeric_limits<double>::infinity();
    CHECK(lies_below({-infinity, 1}, 2) == true);
    CHECK(lies_above({1, infinity}, 2) == std::nullopt);
}
