// SPDX-License-Identifier: MIT
#include "norms/lms.h"

#include <array>
#include <cmath>

#include "norms/published.h"
#include "testing.h"

using namespace asterism::norms;

namespace {

/// WHO 2006, boys' weight on day 0, and other shapes: no skew, logarithmic, skewed the other way.
constexpr std::array shapes{Lms{0.3487, 3.3464, 0.14602}, Lms{1, 33.8787, 0.03496},
                            Lms{0, 3.2, 0.15}, Lms{-0.3387, 16.433, 0.14051},
                            Lms{2.367, 40.11, 0.064}};

}  // namespace

TEST_CASE("with L = 1 the z-score is the plain quotient") {
    CHECK(*lms_z(29.5, {1, 33.8787, 0.03496}) ==
          doctest::Approx((29.5 - 33.8787) / (33.8787 * 0.03496)).epsilon(1e-12));
}

TEST_CASE("with L = 0 it is the logarithm over S, and tiny powers do not lose it") {
    auto const exact = std::log(4.0 / 3.2) / 0.15;
    CHECK(*lms_z(4, {0, 3.2, 0.15}) == doctest::Approx(exact).epsilon(1e-14));
    CHECK(*lms_z(4, {1e-9, 3.2, 0.15}) == doctest::Approx(exact).epsilon(1e-14));
    CHECK(*lms_z(4, {1e-7, 3.2, 0.15}) == doctest::Approx(exact).epsilon(1e-6));
}

TEST_CASE("the median is z = 0 and z rises with the value") {
    for (auto const& lms : shapes) {
        CHECK(*lms_z(lms.m, lms) == doctest::Approx(0));
        auto before = *lms_z(0.5 * lms.m, lms);
        for (double part = 0.51; part < 1.6; part += 0.01) {
            auto const z = *lms_z(part * lms.m, lms);
            CHECK(z > before);
            before = z;
        }
    }
}

TEST_CASE("value and z invert each other, with and without the WHO tail") {
    for (auto const& lms : shapes) {
        for (double z = -5; z <= 5; z += 0.125) {
            CAPTURE(z);
            if (auto const y = lms_value(z, lms)) {
                CHECK(*lms_z(*y, lms) == doctest::Approx(z).epsilon(1e-9).scale(1));
            }
            auto const tailed = lms_value_with_who_tail(z, lms);
            REQUIRE(tailed);
            CHECK(*lms_z_with_who_tail(*tailed, lms) == doctest::Approx(z).epsilon(1e-9).scale(1));
        }
    }
}

TEST_CASE("a z-score beyond the end of the distribution has no value") {
    // 1 + L S z = 1 - 0.348 * 0.146 * 20 is still above 0; at -25 it is not.
    CHECK(lms_value(-19, {0.3487, 3.3464, 0.14602}));
    CHECK_FALSE(lms_value(-25, {0.3487, 3.3464, 0.14602}));
    CHECK_FALSE(lms_value(30, {-0.3387, 16.433, 0.14051}));
}

TEST_CASE("a value that is not positive has no z-score") {
    CHECK_FALSE(lms_z(0, shapes[0]));
    CHECK_FALSE(lms_z(-1, shapes[0]));
    CHECK_FALSE(lms_z(std::nan(""), shapes[0]));
    CHECK_FALSE(lms_z_with_who_tail(0, shapes[0]));
}

TEST_CASE("within 3 SD the WHO tail changes nothing, beyond it goes on in even steps") {
    auto const weight = shapes[0];
    for (double z = -3; z <= 3; z += 0.5) {
        auto const y = *lms_value(z, weight);
        CHECK(*lms_z_with_who_tail(y, weight) == doctest::Approx(*lms_z(y, weight)));
    }
    auto const at = [&](double z) { return *lms_value_with_who_tail(z, weight); };
    CHECK(at(4) - at(3) == doctest::Approx(at(3) - at(2)));
    CHECK(at(5) - at(4) == doctest::Approx(at(3) - at(2)));
    CHECK(at(-3) - at(-4) == doctest::Approx(at(-2) - at(-3)));
    CHECK(*lms_z(at(4), weight) != doctest::Approx(4).epsilon(0.001));
}

TEST_CASE("with L = 1 there is no tail to correct") {
    Lms const head{1, 34.4618, 0.03686};
    for (double y = 25; y < 45; y += 0.5) {
        CHECK(*lms_z_with_who_tail(y, head) == doctest::Approx(*lms_z(y, head)).scale(1));
    }
}

TEST_CASE("the shipped WHO length and head rows all have L = 1, its weight rows do not") {
    for (auto const& row : published::who_table().rows()) {
        if (row.measure == "weight") {
            CHECK(row.parameters.l != 1);
        } else {
            CHECK(row.parameters.l == 1);
        }
    }
}
