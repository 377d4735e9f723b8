// SPDX-License-Identifier: MIT
// The traps of reading one number on one norm: units, bands, margins, sexes, joints, gaps.
#include "norms/reading.h"

#include <algorithm>
#include <cmath>

#include "norms/published.h"
#include "testing.h"

using namespace asterism::norms;
using std::chrono::hours;

namespace {

Query head(double value, Sex sex, std::optional<DayRange> gestation_at_birth) {
    Query query{"head-circumference", value, "cm"};
    query.sex = sex;
    query.gestation = gestation_at_birth;
    return query;
}

Answer read(std::string_view norm, Query const& query) {
    auto const* found = published::size_standards().find(norm);
    REQUIRE(found != nullptr);
    return read_norm(*found, query);
}

Why why(std::string_view norm, Query const& query) {
    auto const answer = read(norm, query);
    REQUIRE_FALSE(answer);
    return answer.error().why;
}

bool notes(Reading const& reading, std::string_view part) {
    return std::ranges::any_of(
        reading.notes, [&](auto const& note) { return note.find(part) != std::string::npos; });
}

}  // namespace

TEST_CASE("girl, 37w3d, 29.5 cm: -2.71 on INTERGROWTH, -2.20 on Olsen, never WHO day 0") {
    auto query = head(29.5, Sex::female, gestation(37, 3));
    auto const birth = read("intergrowth-newborn", query);
    REQUIRE(birth);
    CHECK(birth->z->low == doctest::Approx(-2.71).epsilon(0.002));
    CHECK(is_point(*birth->z));
    CHECK(birth->centile->low == doctest::Approx(0.33).epsilon(0.01));
    CHECK(read("olsen-2010", query)->z->low == doctest::Approx(-2.20).epsilon(0.003));
    query.age = hours{1};
    CHECK(why("who-2006", query) == Why::age_outside);
}

TEST_CASE("37 weeks without days: a band from -2.87 at 37w6d to -2.56 at 37w0d") {
    auto const reading = read("intergrowth-newborn", head(29.5, Sex::female, completed_weeks(37)));
    REQUIRE(reading);
    CHECK(reading->z->low == doctest::Approx(-2.87).epsilon(0.002));
    CHECK(reading->z->high == doctest::Approx(-2.56).epsilon(0.002));
    CHECK(reading->evaluations.size() == 7);
    CHECK(notes(*reading, "the days of gestation are not given"));
    CHECK(lies_below(*reading->z, -2) == true);
    CHECK(lies_below(*reading->z, -2.7) == std::nullopt);
}

TEST_CASE("Olsen has one row for a completed week: its days make no band") {
    auto const week = read("olsen-2010", head(29.5, Sex::female, completed_weeks(37)));
    auto const day = read("olsen-2010", head(29.5, Sex::female, gestation(37, 6)));
    REQUIRE(week);
    CHECK(is_point(*week->z));
    CHECK(week->z == day->z);
}

TEST_CASE("the margin of the tape widens what a cut-off is compared with, not the z-score") {
    auto query = head(30.45, Sex::female, gestation(37, 3));
    query.margin = 0.05;
    auto const reading = read("intergrowth-newborn", query);
    REQUIRE(reading);
    CHECK(is_point(*reading->z));
    CHECK(lies_below(*reading->z, -2) == true);
    CHECK(reading->z_with_margin->low < reading->z->low);
    CHECK(reading->z_with_margin->high > reading->z->high);
    CHECK(lies_below(*reading->z_with_margin, -2) == std::nullopt);
}

TEST_CASE("sex undetermined: both sexes make a band, decided only when they agree") {
    auto const small = read("intergrowth-newborn", head(29.5, Sex::undetermined, gestation(37, 3)));
    REQUIRE(small);
    REQUIRE(small->evaluations.size() == 2);
    CHECK(small->evaluations[0].sex == Sex::female);
    CHECK(small->evaluations[1].sex == Sex::male);
    CHECK(lies_below(*small->z, -2) == true);
    CHECK(notes(*small, "both sexes"));
    // 30.6 cm is above the -2 SD line of girls and below that of boys.
    auto const between =
        read("intergrowth-newborn", head(30.6, Sex::undetermined, gestation(37, 3)));
    CHECK(lies_below(*between->z, -2) == std::nullopt);
}

TEST_CASE("units convert: 295 mm is 29.5 cm, and grams meet a table in kilograms") {
    auto query = head(295, Sex::female, gestation(37, 3));
    query.unit = "mm";
    CHECK(read("intergrowth-newborn", query)->z->low == doctest::Approx(-2.71).epsilon(0.002));
    Query weight{"weight", 2300, "g", 0, Sex::male, gestation(39, 0)};
    CHECK(read("intergrowth-newborn", weight)->centile->low ==
          doctest::Approx(1.0765424).epsilon(1e-6));
    weight.unit = "kg";
    weight.value = 2.3;
    CHECK(read("olsen-2010", weight)->z->low < -2);
}

TEST_CASE("a unit of something else, and a number that is none, are refused") {
    auto query = head(29.5, Sex::female, gestation(37, 3));
    query.unit = "g";
    CHECK(why("intergrowth-newborn", query) == Why::unit);
    CHECK(read("intergrowth-newborn", query).error().reason == "expected `cm`, found `g`");
    CHECK(why("intergrowth-newborn", head(NAN, Sex::female, gestation(37, 3))) == Why::value);
    CHECK(why("intergrowth-newborn", head(INFINITY, Sex::female, gestation(37, 3))) == Why::value);
    query.unit = "cm";
    query.margin = -1;
    CHECK(why("intergrowth-newborn", query) == Why::value);
}

TEST_CASE("outside the table there is no norm, one day is enough") {
    CHECK(why("intergrowth-very-preterm", head(20, Sex::male, gestation(23, 6))) ==
          Why::gestation_outside);
    CHECK(read("intergrowth-very-preterm", head(22, Sex::male, gestation(24, 0))));
    CHECK(read("intergrowth-very-preterm", head(29, Sex::male, gestation(32, 6))));
    CHECK(why("intergrowth-very-preterm", head(29, Sex::male, gestation(33, 0))) ==
          Why::gestation_outside);
    CHECK(read("intergrowth-newborn", head(36, Sex::male, gestation(42, 6))));
    CHECK(why("intergrowth-newborn", head(36, Sex::male, gestation(43, 0))) ==
          Why::gestation_outside);
}

TEST_CASE("the joint at 33 weeks is a step, and both sides warn of it") {
    auto const before = read("intergrowth-very-preterm", head(28.5, Sex::male, gestation(32, 6)));
    auto const after = read("intergrowth-newborn", head(28.5, Sex::male, gestation(33, 0)));
    REQUIRE(before);
    REQUIRE(after);
    CHECK(before->z->low - after->z->low > 0.5);
    CHECK(notes(*before, "near the joint"));
    CHECK(notes(*after, "near the joint"));
    CHECK_FALSE(notes(*after, "extrapolated"));
    CHECK_FALSE(
        notes(*read("intergrowth-newborn", head(30, Sex::male, gestation(34, 0))), "joint"));
}

TEST_CASE("girls at 33w0d are warned of, also inside a band and with the sex open") {
    auto const girl = head(29, Sex::female, gestation(33, 0));
    CHECK(notes(*read("intergrowth-newborn", girl), "extrapolated"));
    auto const week = head(29, Sex::female, completed_weeks(33));
    CHECK(notes(*read("intergrowth-newborn", week), "extrapolated"));
    auto const open = head(29, Sex::undetermined, gestation(33, 0));
    CHECK(notes(*read("intergrowth-newborn", open), "extrapolated"));
    auto const next_day = head(29, Sex::female, gestation(33, 1));
    CHECK_FALSE(notes(*read("intergrowth-newborn", next_day), "extrapolated"));
}

TEST_CASE("WHO takes the nearest day of age") {
    auto query = head(34.5, Sex::female, gestation(40, 0));
    query.age = hours{7 * 24 - 12};
    CHECK(read("who-2006", query)->evaluations.front().key == 7);
    query.age = hours{7 * 24 - 13};
    CHECK(read("who-2006", query)->evaluations.front().key == 6);
    query.age = hours{73};
    CHECK(read("who-2006", query)->evaluations.front().key == 3);
    query.age = hours{182 * 24};
    CHECK(read("who-2006", query)->evaluations.front().key == 182);
    query.age = hours{182 * 24 + 1};
    CHECK(why("who-2006", query) == Why::age_outside);
}

TEST_CASE("WHO weight has its tail, Olsen weight has none") {
    Query query{"weight", 5.9, "kg", 0, Sex::male, gestation(40, 0)};
    query.age = hours{14 * 24};
    auto const* row = published::who_table().find("weight", Sex::male, 14);
    REQUIRE(row != nullptr);
    auto const z = read("who-2006", query)->z->low;
    REQUIRE(z > 3);
    CHECK(z == doctest::Approx(*lms_z_with_who_tail(5.9, *row)));
    CHECK(z != doctest::Approx(*lms_z(5.9, *row)).epsilon(0.001));
    Query birth{"weight", 6500, "g", 0, Sex::male, gestation(40, 0)};
    auto const* olsen = published::olsen_table().find("weight", Sex::male, 40);
    REQUIRE(olsen != nullptr);
    CHECK(read("olsen-2010", birth)->z->low == doctest::Approx(*lms_z(6500, *olsen)));
}

TEST_CASE("nothing weighs nothing, also not within its margin") {
    Query query{"weight", 0, "g", 0, Sex::male, gestation(28, 0)};
    CHECK(why("intergrowth-very-preterm", query) == Why::value);
    query.value = 5;
    query.margin = 10;
    CHECK(why("intergrowth-very-preterm", query) == Why::value);
    query.gestation = gestation(40, 0);
    CHECK(why("olsen-2010", query) == Why::value);
}

TEST_CASE("a slip of the pen gives a z-score and a warning") {
    auto const slip = read("intergrowth-newborn", head(43.5, Sex::male, gestation(40, 0)));
    REQUIRE(slip);
    CHECK(slip->z->low > 5);
    CHECK(notes(*slip, "more than 5 SD"));
    auto const fine = read("intergrowth-newborn", head(34.5, Sex::male, gestation(40, 0)));
    CHECK_FALSE(notes(*fine, "5 SD"));
}

TEST_CASE("an age that is not given is taken as birth, and said so") {
    auto query = head(34.5, Sex::male, gestation(40, 0));
    CHECK(notes(*read("intergrowth-newborn", query), "the age is not given"));
    query.age = hours{26};
    CHECK(read("intergrowth-newborn", query)->notes.empty());
}

TEST_CASE("a bigger head has a bigger z-score on every norm that reads it") {
    for (auto const* norm : {"intergrowth-newborn", "olsen-2010"}) {
        auto before = read(norm, head(25, Sex::female, gestation(38, 2)))->z->low;
        for (double cm = 25.1; cm < 42; cm += 0.1) {
            auto const z = read(norm, head(cm, Sex::female, gestation(38, 2)))->z->low;
            CHECK(z > before);
            before = z;
        }
    }
}
