// SPDX-License-Identifier: MIT
#include "norms/days.h"

#include "testing.h"

using namespace asterism::norms;
using std::chrono::hours;

TEST_CASE("gestation is whole days and weeks without days are all seven of them") {
    CHECK(gestation(37, 3) == DayRange{262, 262});
    CHECK(completed_weeks(37) == DayRange{259, 265});
    CHECK(contains(completed_weeks(37), gestation(37, 6)));
    CHECK_FALSE(contains(completed_weeks(37), gestation(38, 0)));
}

TEST_CASE("ranges that touch in one day overlap, neighbours do not") {
    CHECK(overlap({1, 5}, {5, 9}));
    CHECK_FALSE(overlap({1, 4}, {5, 9}));
    CHECK(contains({1, 9}, {1, 9}));
    CHECK_FALSE(contains({2, 9}, {1, 9}));
}

TEST_CASE("age rounds to the nearest day, half a day upwards, as the WHO macros do") {
    CHECK(nearest_day(hours{0}) == 0);
    CHECK(nearest_day(hours{11}) == 0);
    CHECK(nearest_day(hours{12}) == 1);
    CHECK(nearest_day(hours{35}) == 1);
    CHECK(nearest_day(hours{36}) == 2);
    CHECK(nearest_day(hours{14 * 24}) == 14);
}

TEST_CASE("completed days do not round up") {
    CHECK(completed_days(hours{23}) == 0);
    CHECK(completed_days(hours{24}) == 1);
    CHECK(completed_days(hours{47}) == 1);
}

TEST_CASE("gestation is printed in weeks and days") {
    CHECK(gestation_text(262) == "37w3d");
    CHECK(gestation_text(168) == "24w0d");
    CHECK(gestation_text(gestation(33, 0)) == "33w0d");
    CHECK(gestation_text(completed_weeks(37)) == "37w0d to 37w6d");
}
