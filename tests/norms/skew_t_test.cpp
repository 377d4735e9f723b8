// SPDX-License-Identifier: MIT
#include "norms/skew_t.h"

#include <cmath>

#include "norms/published.h"
#include "testing.h"

using namespace asterism::norms;
using published::newborn;

namespace {

/// Calls `check` for every row of the shipped table.
template <class Check>
void for_all_rows(Check const& check) {
    for (auto const& row : published::newborn_table().rows()) {
        CAPTURE(row.measure);
        CAPTURE(row.key);
        check(row.parameters);
    }
}

/// Simpson's rule for the density between two values.
double area(SkewT const& p, double from, double to) {
    constexpr int steps = 20000;
    auto const h = (to - from) / steps;
    auto sum = skew_t_density(from, p) + skew_t_density(to, p);
    for (int i = 1; i < steps; ++i) sum += (i % 2 == 0 ? 2 : 4) * skew_t_density(from + i * h, p);
    return sum * h / 3;
}

}  // namespace

TEST_CASE("the girl of 37w3d with a head of 29.5 cm is at -2.71, not at the quotient -2.86") {
    auto const p = newborn("head-circumference", Sex::female, 262);
    CHECK(skew_t_z(29.5, p) == doctest::Approx(-2.71).epsilon(0.002));
    CHECK((29.5 - p.mu) / p.sigma == doctest::Approx(-2.86).epsilon(0.002));
}

TEST_CASE("her z of -2.6 would be a head of 29.66 cm") {
    // Own computation with the same parameters, not published.
    auto const p = newborn("head-circumference", Sex::female, 262);
    CHECK(skew_t_value(-2.6, p) == doctest::Approx(29.66).epsilon(0.0002));
}

TEST_CASE("both tails add up to one and the mode splits them by nu") {
    for_all_rows([](SkewT const& p) {
        auto const mode = skew_t_tails(p.mu, p);
        CHECK(mode.lower == doctest::Approx(1 / (1 + p.nu * p.nu)).epsilon(1e-12));
        CHECK(mode.lower + mode.upper == doctest::Approx(1).epsilon(1e-14));
    });
}

TEST_CASE("value and z invert each other in all rows from -6 to 6") {
    for_all_rows([](SkewT const& p) {
        for (double z = -6; z <= 6; z += 0.75) {
            CHECK(skew_t_z(skew_t_value(z, p), p) == doctest::Approx(z).epsilon(1e-8).scale(1));
        }
    });
}

TEST_CASE("z rises with the value across the mode") {
    for_all_rows([](SkewT const& p) {
        auto before = skew_t_z(p.mu - 5 * p.sigma, p);
        for (double step = -4.9; step <= 5; step += 0.1) {
            auto const z = skew_t_z(p.mu + step * p.sigma, p);
            CHECK(z > before);
            before = z;
        }
    });
}

TEST_CASE("with nu = 1 it is symmetric") {
    SkewT const p{30, 1.3, 1, 18.5};
    CHECK(skew_t_z(30, p) == doctest::Approx(0).scale(1));
    for (double distance = 0.1; distance < 8; distance += 0.1) {
        CHECK(skew_t_z(30 + distance, p) == doctest::Approx(-skew_t_z(30 - distance, p)));
    }
}

TEST_CASE("swapping nu for 1 / nu mirrors the distribution") {
    SkewT const p{30, 1.3, 1.2, 18.5};
    SkewT const mirrored{30, 1.3, 1 / 1.2, 18.5};
    for (double distance = -6; distance <= 6; distance += 0.25) {
        CHECK(skew_t_tails(30 + distance, p).lower ==
              doctest::Approx(skew_t_tails(30 - distance, mirrored).upper).epsilon(1e-12));
    }
}

TEST_CASE("the density integrates to the tails") {
    auto const p = newborn("weight", Sex::male, 273);
    for (double y : {2.0, 2.6, p.mu, 3.9, 4.6}) {
        CAPTURE(y);
        CHECK(area(p, y - 40 * p.sigma, y) ==
              doctest::Approx(skew_t_tails(y, p).lower).epsilon(1e-6));
    }
}

TEST_CASE("with many degrees of freedom and no skew it becomes the normal distribution") {
    SkewT const p{0, 1, 1, 1e7};
    for (double z = -4; z <= 4; z += 0.5) {
        CHECK(skew_t_z(z, p) == doctest::Approx(z).epsilon(1e-5).scale(1));
    }
}

TEST_CASE("far out the z-score keeps its digits and stays finite") {
    auto const p = newborn("head-circumference", Sex::female, 262);
    auto const low = skew_t_z(p.mu - 20 * p.sigma, p);
    auto const lower = skew_t_z(p.mu - 25 * p.sigma, p);
    CHECK(std::isfinite(lower));
    CHECK(lower < low);
    CHECK(low < -6);
}
