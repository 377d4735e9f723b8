// SPDX-License-Identifier: MIT
#include "norms/computed.h"

#include "norms/published.h"
#include "testing.h"

using namespace asterism::norms;

namespace {

/// The newborn reading of one measure for a girl.
Reading newborn(std::string measure, double cm, DayRange days, double margin = 0) {
    Query query{std::move(measure), cm, "cm", margin, Sex::female, days};
    auto const reading = published::size_standards().preferred(query);
    REQUIRE(reading);
    return *reading;
}

}  // namespace

TEST_CASE("ratios and percents come from the readings with their margins") {
    CHECK(compute(Computation::ratio, point(10), point(27)) == point(10.0 / 27));
    auto const index = compute(Computation::percent, {22.5, 23.5}, {64.5, 65.5});
    REQUIRE(index);
    CHECK(index->low == doctest::Approx(100 * 22.5 / 65.5));
    CHECK(index->high == doctest::Approx(100 * 23.5 / 64.5));
    CHECK_FALSE(compute(Computation::ratio, point(10), point(0)));
    CHECK_FALSE(compute(Computation::ratio, point(10), {-1, 1}));
}

TEST_CASE("the middle finger of the Malaysian series is 0.425 of the hand") {
    // Halder 1999: 27.4 and 64.4 mm, ratio printed 0.425; palm 37.1 mm, ratio printed 0.58.
    CHECK(compute(Computation::ratio, point(27.4), point(64.4))->low ==
          doctest::Approx(0.425).epsilon(0.002));
    CHECK(compute(Computation::ratio, point(37.1), point(64.4))->low ==
          doctest::Approx(0.58).epsilon(0.01));
}

TEST_CASE("a fontanelle is the mean of length and width") {
    CHECK(compute(Computation::mean, point(24), point(18)) == point(21));
    CHECK(compute(Computation::mean, {23.5, 24.5}, {17.5, 18.5}) == Band{20.5, 21.5});
}

TEST_CASE("a difference has a sign, an absolute one has none") {
    CHECK(compute(Computation::difference, point(70), point(92)) == point(-22));
    CHECK(compute(Computation::absolute_difference, point(95), point(99)) == point(4));
    CHECK(compute(Computation::absolute_difference, point(99), point(95)) == point(4));
    CHECK(compute(Computation::absolute_difference, {95, 97}, {96, 98}) == Band{0, 3});
    CHECK(compute(Computation::absolute_difference, {90, 91}, {95, 97}) == Band{4, 7});
}

TEST_CASE("z-scores are not subtracted as plain numbers") {
    CHECK_FALSE(compute(Computation::z_difference, point(1), point(2)));
}

TEST_CASE("head against length: one gestation for both, so the band is narrow") {
    auto const head = newborn("head-circumference", 29.5, completed_weeks(37));
    auto const length = newborn("length", 47, completed_weeks(37));
    auto const difference = z_difference(head, length);
    REQUIRE(difference);
    auto const loose = compute(Computation::difference, *head.z, *length.z);
    CHECK(difference->high - difference->low < loose->high - loose->low);
    CHECK(difference->high < -1.5);
    auto const known = z_difference(newborn("head-circumference", 29.5, gestation(37, 3)),
                                    newborn("length", 47, gestation(37, 3)));
    REQUIRE(known);
    CHECK(is_point(*known));
    CHECK(difference->low <= known->low);
    CHECK(known->high <= difference->high);
}

TEST_CASE("the margin of either reading widens the difference") {
    auto const exact = z_difference(newborn("head-circumference", 34, gestation(40, 0)),
                                    newborn("length", 50, gestation(40, 0)));
    auto const taped = z_difference(newborn("head-circumference", 34, gestation(40, 0), 0.05),
                                    newborn("length", 50, gestation(40, 0), 0.05));
    CHECK(taped->low < exact->low);
    CHECK(taped->high > exact->high);
}

TEST_CASE("readings of two norms, or of two gestations, are not compared") {
    auto const term = newborn("head-circumference", 34, gestation(40, 0));
    CHECK_FALSE(z_difference(term, newborn("length", 50, gestation(39, 0))));
    CHECK_FALSE(z_difference(term, newborn("length", 40, gestation(31, 0))));
    CHECK_FALSE(z_difference(term, newborn("length", 50, completed_weeks(40))));
    Reading const plain{.norm = term.norm};
    CHECK_FALSE(z_difference(plain, plain));
}
