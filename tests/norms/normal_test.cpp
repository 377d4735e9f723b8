// SPDX-License-Identifier: MIT
#include "norms/normal.h"

#include <cmath>

#include "testing.h"

using namespace asterism::norms;

TEST_CASE("centiles of the usual z-scores") {
    CHECK(centile_of(0) == doctest::Approx(50));
    CHECK(centile_of(-1.880793608) == doctest::Approx(3).epsilon(1e-9));
    CHECK(centile_of(-1.281551566) == doctest::Approx(10).epsilon(1e-9));
    CHECK(centile_of(-2) == doctest::Approx(2.275013195).epsilon(1e-9));
    CHECK(centile_of(-3) == doctest::Approx(0.1349898032).epsilon(1e-9));
}

TEST_CASE("the 3rd centile and -2 SD are two different cut-offs") {
    CHECK(z_of_centile(3) > -2);
    CHECK(centile_of(-2) < 3);
}

TEST_CASE("z goes to tails and back, also far out where 1 - p has no digits left") {
    for (double z = -30; z <= 30; z += 0.25) {
        CAPTURE(z);
        CHECK(z_of(normal_tails(z)) == doctest::Approx(z).epsilon(1e-12).scale(1));
    }
}

TEST_CASE("the tails of z are those of -z the other way round") {
    for (double z = 0; z <= 9; z += 0.5) {
        auto const right = normal_tails(z);
        auto const left = normal_tails(-z);
        CHECK(right.lower == left.upper);
        CHECK(right.upper == left.lower);
        CHECK(right.lower + right.upper == doctest::Approx(1).epsilon(1e-15));
    }
}

TEST_CASE("an empty tail is an infinite z and not an exception") {
    CHECK(z_of({0, 1}) == -INFINITY);
    CHECK(z_of({1, 0}) == INFINITY);
}

TEST_CASE("centile and z invert each other") {
    for (double centile = 0.5; centile < 100; centile += 0.5) {
        CHECK(centile_of(z_of_centile(centile)) == doctest::Approx(centile).epsilon(1e-12));
    }
}
