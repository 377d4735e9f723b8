// SPDX-License-Identifier: MIT
#include "norms/mean_sd.h"

#include "testing.h"

using namespace asterism::norms;

TEST_CASE("z is the distance from the mean in SD, and inverts") {
    MeanSd const inner_canthal{22.9, 0, 2.1};  // Moon 2012
    CHECK(mean_sd_z(27.1, inner_canthal, 0) == doctest::Approx(2));
    CHECK(mean_sd_z(18.7, inner_canthal, 280) == doctest::Approx(-2));
    for (double z = -4; z <= 4; z += 0.5) {
        CHECK(mean_sd_z(mean_sd_value(z, inner_canthal, 0), inner_canthal, 0) ==
              doctest::Approx(z).scale(1));
    }
}

TEST_CASE("published lower limits of penile length are 2.5 SD below the mean") {
    // Akin 2011: 2.19 to 4.14 cm printed; Fouladinejad 2014: 2.33; Feldman 1975: 2.5.
    CHECK(mean_sd_value(-2.5, {3.16, 0, 0.39}, 0) == doctest::Approx(2.19).epsilon(0.005));
    CHECK(mean_sd_value(2.5, {3.16, 0, 0.39}, 0) == doctest::Approx(4.14).epsilon(0.005));
    CHECK(mean_sd_value(-2.5, {3.21, 0, 0.35}, 0) == doctest::Approx(2.33).epsilon(0.005));
    CHECK(mean_sd_value(-2.5, {3.5, 0, 0.4}, 0) == doctest::Approx(2.5));
}

TEST_CASE("the preterm line with a minus sign meets the other published means") {
    // Tuladhar 1998; printed with +2.27, which would give 7.07 cm at 30 weeks.
    MeanSd const line{-2.27, 0.16, 0.4};
    CHECK(mean_at(line, 24 * 7) == doctest::Approx(1.57));
    CHECK(mean_at(line, 30 * 7) == doctest::Approx(2.53));
    CHECK(mean_at(line, 36 * 7) == doctest::Approx(3.49));
    CHECK(mean_sd_value(-2.5, line, 30 * 7) == doctest::Approx(1.5).epsilon(0.03));
}

TEST_CASE("a mean that does not depend on gestation is the same on every day") {
    MeanSd const norm{8.3, 0, 1.1};
    CHECK(mean_at(norm, 0) == mean_at(norm, 300));
}
