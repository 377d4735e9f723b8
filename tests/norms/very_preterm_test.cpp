// SPDX-License-Identifier: MIT
#include "norms/very_preterm.h"

#include <cmath>

#include "norms/published.h"
#include "testing.h"

using namespace asterism::norms;
using published::equation;

TEST_CASE("weeks are exact, not completed: every day has its own mean") {
    auto const& head = equation("head-circumference");
    auto const a = very_preterm_value(0, head, Sex::female, 203);
    auto const b = very_preterm_value(0, head, Sex::female, 204);
    CHECK(b - a == doctest::Approx(0.887638 / 7).epsilon(1e-9));
}

TEST_CASE("boys have their own intercept") {
    for (auto const& row : published::very_preterm_equations()) {
        auto const girl = very_preterm_z(1.2, row, Sex::female, 203);
        auto const boy = very_preterm_z(1.2, row, Sex::male, 203);
        CHECK(*girl - *boy == doctest::Approx(row.for_boys / std::sqrt(row.variance)));
    }
}

TEST_CASE("the constants are variances: one SD of a head is 1.56 cm") {
    auto const& head = equation("head-circumference");
    auto const step =
        very_preterm_value(1, head, Sex::male, 200) - very_preterm_value(0, head, Sex::male, 200);
    CHECK(step == doctest::Approx(std::sqrt(2.433481)).epsilon(1e-9));
}

TEST_CASE("value and z invert each other on every day and are symmetric on their scale") {
    for (auto const& row : published::very_preterm_equations()) {
        for (int day = row.days.first; day <= row.days.last; ++day) {
            for (double z : {-6.0, -2.0, 0.0, 1.25, 6.0}) {
                auto const value = very_preterm_value(z, row, Sex::female, day);
                CHECK(*very_preterm_z(value, row, Sex::female, day) ==
                      doctest::Approx(z).epsilon(1e-10).scale(1));
            }
        }
    }
}

TEST_CASE("weight is normal in its logarithm, and nothing weighs nothing") {
    auto const& weight = equation("weight");
    auto const at = [&](double z) { return very_preterm_value(z, weight, Sex::male, 200); };
    CHECK(at(2) / at(0) == doctest::Approx(at(0) / at(-2)));
    CHECK_FALSE(very_preterm_z(0, weight, Sex::male, 200));
    CHECK_FALSE(very_preterm_z(-1, weight, Sex::male, 200));
}
