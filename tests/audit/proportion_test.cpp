// SPDX-License-Identifier: MIT
#include "audit/proportion.h"

#include <cmath>

#include "audit/control_chart.h"
#include "testing.h"

using namespace asterism::audit;

namespace {

void check(std::uint64_t count, std::uint64_t total, double low, double high) {
    CAPTURE(count);
    auto const interval = wilson(count, total);
    CHECK(std::abs(interval.low - low) <= 0.00005);
    CHECK(std::abs(interval.high - high) <= 0.00005);
}

}  // namespace

TEST_CASE("score intervals of Newcombe 1998, Stat Med 17:857-872") {
    // Its four examples; the values from memory and recomputed by a script outside the project.
    check(81, 263, .2553, .3662);
    check(15, 148, .0624, .1605);
    check(0, 20, 0, .1611);
    check(1, 29, .0061, .1718);
}

TEST_CASE("score intervals of clinical audits, recomputed by a script outside the project") {
    check(20, 20, .8389, 1);
    check(0, 160, 0, .0234);
    check(18, 20, .6990, .9721);
    check(21, 21, .8454, 1);  // Boos 2020: large forehead, 84.5 to 100 %
}

TEST_CASE("every score interval holds its share, and the limits solve the score equation") {
    // Wilson 1927: the limits are the p at which |x/n - p| = z sqrt(p(1-p)/n).
    for (std::uint64_t total = 1; total <= 60; ++total) {
        for (std::uint64_t count = 0; count <= total; ++count) {
            double const n = static_cast<double>(total);
            double const share = static_cast<double>(count) / n;
            auto const interval = wilson(count, total);
            CHECK(interval.low <= share);
            CHECK(share <= interval.high);
            for (double const p : {interval.low, interval.high})
                if (p > 0 && p < 1)
                    CHECK(std::abs(share - p) ==
                          doctest::Approx(z95 * std::sqrt(p * (1 - p) / n)).epsilon(1e-9));
        }
    }
    CHECK(wilson(0, 0).low == 0);
    CHECK(wilson(0, 0).high == 1);
}

TEST_CASE("a p-chart with samples of one size") {
    // Montgomery, Introduction to Statistical Quality Control, the juice cans: 30 samples of 50
    // with 347 cans faulty; mean .2313, limits .0524 and .4102 (from memory, and by hand from the
    // formula).
    std::vector<ChartPoint> points;
    for (int i = 0; i < 30; ++i) points.push_back({"", i == 0 ? 28u : 11u, 50, 0, 1});
    CHECK(28 + 29 * 11 == 347);
    auto const chart = control_chart(points);
    CHECK(std::abs(chart.mean - .2313) < .00005);
    CHECK(std::abs(chart.points[3].low - .0524) < .00006);
    CHECK(std::abs(chart.points[3].high - .4102) < .00006);
    CHECK(chart.points[0].outside());
    CHECK_FALSE(chart.points[1].outside());
}

TEST_CASE("a p-chart with samples of different sizes, by hand") {
    auto const chart =
        control_chart({{"a", 10, 100, 0, 1}, {"none", 0, 0, 0, 1}, {"b", 30, 300, 0, 1}});
    REQUIRE(chart.points.size() == 2);  // a month without a subject is no point
    CHECK(chart.mean == doctest::Approx(.1));
    CHECK(chart.points[0].low == doctest::Approx(.01));  // .1 - 3 * .03
    CHECK(chart.points[0].high == doctest::Approx(.19));
    CHECK(chart.points[1].high == doctest::Approx(.1 + 3 * std::sqrt(.09 / 300)));
    CHECK(control_chart({}).points.empty());
    CHECK(control_chart({{"a", 0, 5, 0, 1}}).points[0].low == 0);
}
