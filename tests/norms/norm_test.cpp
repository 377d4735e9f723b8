// SPDX-License-Identifier: MIT
#include "norms/norm.h"

#include <algorithm>

#include "norms/published.h"
#include "testing.h"

using namespace asterism::norms;

namespace {

NormDescription ear_length() {
    NormDescription norm;
    norm.norm = "ear-length-lian";
    norm.measures = {"ear-length"};
    norm.kind = Kind::mean_sd;
    norm.unit = "mm";
    norm.mean = 36;
    norm.sd = 3;
    return norm;
}

bool says(NormDescription const& norm, std::string_view message) {
    auto const errors = check_description(norm);
    return std::ranges::any_of(errors, [&](auto const& e) { return e.message == message; });
}

}  // namespace

TEST_CASE("a complete description has no fault") {
    CHECK(check_description(ear_length()).empty());
    for (auto const& norm : published::size_descriptions()) {
        CAPTURE(norm.norm);
        CHECK(check_description(norm).empty());
    }
}

TEST_CASE("a mean and SD norm needs both, a unit, and a place for its slope") {
    auto norm = ear_length();
    norm.mean.reset();
    norm.sd = 0;
    norm.unit.clear();
    norm.mean_per_week = 0.16;
    CHECK(says(norm, "a mean and SD norm needs a mean"));
    CHECK(says(norm, "a mean and SD norm needs an SD above 0"));
    CHECK(says(norm, "this kind of norm needs a unit"));
    CHECK(says(norm,
               "a mean that rises per week is looked up by gestation in days, and no other is"));
    CHECK(check_description(norm).size() == 4);
    norm = ear_length();
    norm.clock = Clock::age_day;
    norm.mean_per_week = 1;
    CHECK(check_description(norm).size() == 1);
}

TEST_CASE("centiles must be there, between 0 and 100, and rise") {
    auto norm = ear_length();
    norm.kind = Kind::centiles;
    CHECK(says(norm, "a centile norm needs centiles"));
    norm.centiles = {{3, 7.3}, {97, 9.5}};
    CHECK(check_description(norm).empty());
    norm.centiles = {{97, 9.5}, {3, 7.3}};
    CHECK(says(norm, "centiles and their values must rise"));
    norm.centiles = {{3, 7.3}, {50, 7.3}};
    CHECK(says(norm, "centiles and their values must rise"));
    norm.centiles = {{0, 7.3}, {100, 9.5}};
    CHECK(says(norm, "a centile lies between 0 and 100"));
}

TEST_CASE("a cut-off norm needs a cut-off and a norm needs an id and a measure") {
    auto norm = ear_length();
    norm.kind = Kind::cut_off;
    CHECK(says(norm, "a cut-off norm needs a cut-off"));
    norm.norm.clear();
    norm.measures.clear();
    CHECK(says(norm, "a norm needs an id"));
    CHECK(says(norm, "a norm needs a measure"));
}

TEST_CASE("tables belong to the kinds that have them") {
    auto norm = ear_length();
    norm.table = "ears.csv";
    CHECK(says(norm, "this kind of norm has no table"));
    norm = ear_length();
    norm.measures = {"ear-length", "hand-length"};
    CHECK(says(norm, "a norm without a table has one measure"));
    norm.kind = Kind::lms;
    CHECK(says(norm, "this kind of norm needs a table"));
    CHECK(says(norm, "an LMS norm must say by what its rows are looked up"));
    norm.who_tail = {"weight"};
    CHECK(says(norm, "the WHO tail is for `weight`, which the norm does not cover"));
}

TEST_CASE("ranges must not end before they begin") {
    using std::chrono::hours;
    auto norm = ear_length();
    norm.windows = {{DayRange{300, 259}, hours{72}, hours{0}}};
    norm.cautions = {{{}, {231, 230}, "never"}};
    CHECK(says(norm, "a range of gestation ends before it begins"));
    CHECK(says(norm, "a range of age ends before it begins"));
    CHECK(says(norm, "a caution ends before it begins"));
}

TEST_CASE("a bundled table that is missing is an error, one for the user to supply is not") {
    auto norm = published::size_descriptions().front();
    auto const made = make_norm(norm, {});
    REQUIRE_FALSE(made);
    CHECK(made.error().front() == NormError{"intergrowth-newborn", "", 0,
                                            "the table `intergrowth-newborn.csv` is not there"});
    norm.bundled = false;
    auto const waiting = make_norm(norm, {});
    REQUIRE(waiting);
    CHECK(waiting->lacks_table());
    CHECK(waiting->covers("weight"));
    CHECK_FALSE(waiting->covers("ear-length"));
}

TEST_CASE("faults of a table carry norm, table and line") {
    auto const who = published::size_descriptions()[2];
    auto const made = make_norm(
        who, {{"who-2006.csv", "measurement,unit,sex,age_days,L,M,S\nweight,kg,male,0,1,0,1\n"}});
    REQUIRE_FALSE(made);
    CHECK(made.error() == NormErrors{{"who-2006", "who-2006.csv", 2,
                                      "expected a number above 0 in column `M`, found `0`"}});
}

TEST_CASE("a measure that its table lacks is an error") {
    auto const who = published::size_descriptions()[2];
    auto const made = make_norm(
        who, {{"who-2006.csv", "measurement,unit,sex,age_days,L,M,S\nweight,kg,male,0,1,3,1\n"}});
    REQUIRE_FALSE(made);
    REQUIRE(made.error().size() == 2);
    CHECK(made.error()[0].message == "the table has no rows for `head-circumference`");
}

TEST_CASE("the kind fixes the clock of the INTERGROWTH norms") {
    auto norm = published::size_descriptions().front();
    norm.clock = Clock::none;
    auto const made = make_norm(norm, published::shipped_tables());
    REQUIRE(made);
    CHECK(made->clock() == Clock::gestation_day);
    CHECK(made->unit("weight") == "kg");
    CHECK(made->unit("length") == "cm");
}
