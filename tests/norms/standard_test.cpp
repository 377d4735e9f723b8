// SPDX-License-Identifier: MIT
// Which norm is preferred, and what is said by those that are not asked.
#include "norms/standard.h"

#include <algorithm>

#include "norms/published.h"
#include "testing.h"

using namespace asterism::norms;
using published::size_standards;
using std::chrono::hours;

namespace {

Query head(std::optional<DayRange> gestation_at_birth, std::optional<hours> age) {
    Query query{"head-circumference", 33, "cm"};
    query.sex = Sex::female;
    query.gestation = gestation_at_birth;
    query.age = age;
    return query;
}

std::string preferred_norm(Standards const& standards, Query const& query) {
    auto const reading = standards.preferred(query);
    return reading ? reading->norm : "none";
}

/// A Fenton table of two days with invented numbers: the shape a user supplies.
Standards with_user_table() {
    auto tables = published::shipped_tables();
    std::string text = "measurement,unit,sex,pma_days,L,M,S\n";
    for (auto const* measure : {"head_circumference,cm", "length,cm", "weight,g"}) {
        for (auto const* sex : {"female", "male"}) {
            for (auto const* day : {"220", "240", "262", "280"}) {
                text += std::string(measure) + "," + sex + "," + day + ",1,30,0.05\n";
            }
        }
    }
    tables["fenton-2013.csv"] = text;
    return Standards::build(published::size_descriptions(), tables).value();
}

}  // namespace

TEST_CASE("at birth the INTERGROWTH norm of the gestation is preferred") {
    CHECK(preferred_norm(size_standards(), head(gestation(40, 0), hours{0})) ==
          "intergrowth-newborn");
    CHECK(preferred_norm(size_standards(), head(gestation(33, 0), hours{72})) ==
          "intergrowth-newborn");
    CHECK(preferred_norm(size_standards(), head(gestation(32, 6), {})) ==
          "intergrowth-very-preterm");
    CHECK(preferred_norm(size_standards(), head(gestation(24, 0), {})) ==
          "intergrowth-very-preterm");
}

TEST_CASE("after 72 hours a term baby goes by WHO, from the very next hour") {
    CHECK(preferred_norm(size_standards(), head(gestation(37, 0), hours{72})) ==
          "intergrowth-newborn");
    CHECK(preferred_norm(size_standards(), head(gestation(37, 0), hours{73})) == "who-2006");
    CHECK(preferred_norm(size_standards(), head(completed_weeks(41), hours{400})) == "who-2006");
}

TEST_CASE("a baby born preterm never meets WHO, at any age") {
    for (int age = 0; age <= 182 * 24; age += 12) {
        CHECK(preferred_norm(size_standards(), head(gestation(36, 6), hours{age})) !=
              std::string("who-2006"));
    }
    CHECK(preferred_norm(size_standards(), head(gestation(36, 6), hours{73})) == "none");
    CHECK(preferred_norm(size_standards(), head(DayRange{258, 264}, hours{73})) == "none");
}

TEST_CASE("outside all tables nothing is preferred, even where Olsen or Fenton still reads") {
    CHECK(preferred_norm(size_standards(), head(gestation(23, 3), {})) == "none");
    auto const answers = size_standards().readings(head(gestation(23, 3), {}));
    auto const reading = std::ranges::find_if(answers, [](auto const& a) { return a.has_value(); });
    REQUIRE(reading != answers.end());
    CHECK((*reading)->norm == "olsen-2010");
    CHECK_FALSE((*reading)->preferred);
    CHECK(preferred_norm(size_standards(), head(gestation(43, 2), {})) == "none");
    CHECK(preferred_norm(size_standards(), head({}, {})) == "none");
}

TEST_CASE("every norm of the measure answers, in the order of the descriptions") {
    auto const answers = size_standards().readings(head(gestation(38, 1), hours{5}));
    REQUIRE(answers.size() == 5);
    CHECK(answers[0]->norm == "intergrowth-newborn");
    CHECK(answers[0]->preferred);
    CHECK(answers[1].error().norm == "intergrowth-very-preterm");
    CHECK(answers[2].error().norm == "who-2006");
    CHECK(answers[3].error() ==
          NoNorm{"fenton-2013", Why::not_supplied,
                 "the table `fenton-2013.csv` has to be supplied by the user"});
    CHECK(answers[4]->norm == "olsen-2010");
    CHECK_FALSE(answers[4]->preferred);
    CHECK(size_standards().readings({"ear-length", 36, "mm"}).empty());
}

TEST_CASE("Fenton, when supplied, stands beside at birth and is preferred for preterms later") {
    auto const standards = with_user_table();
    CHECK(preferred_norm(standards, head(gestation(37, 3), {})) == "intergrowth-newborn");
    auto const at_birth = standards.readings(head(gestation(37, 3), {}));
    REQUIRE(at_birth[3]);
    CHECK_FALSE(at_birth[3]->preferred);
    CHECK(at_birth[3]->z->low == doctest::Approx((33 - 30) / 1.5));

    // Born at 31w3d (220 days), 20 days old: post-menstrual day 240.
    auto const later = standards.preferred(head(gestation(31, 3), hours{20 * 24 + 23}));
    REQUIRE(later);
    CHECK(later->norm == "fenton-2013");
    CHECK(later->evaluations.front().key == 240);
    CHECK(preferred_norm(standards, head(gestation(40, 0), hours{100})) == "who-2006");
}

TEST_CASE("a day the user's table lacks is said, not filled in from its neighbours") {
    auto const standards = with_user_table();
    auto const answers = standards.readings(head(gestation(31, 4), hours{100}));
    REQUIRE_FALSE(answers[3]);
    CHECK(answers[3].error().why == Why::not_in_table);
    CHECK(answers[3].error().reason == "the table has no row for 32w1d");
}

TEST_CASE("a band across the joint is read by neither model") {
    auto const answers = size_standards().readings(head(DayRange{228, 234}, {}));
    CHECK(answers[0].error().why == Why::gestation_outside);
    CHECK(answers[1].error().why == Why::gestation_outside);
}

TEST_CASE("all errors of all norms are reported together") {
    auto descriptions = published::size_descriptions();
    descriptions[1].table = "gone.csv";
    descriptions[2].clock = Clock::none;
    descriptions[4].norm = "intergrowth-newborn";
    auto const built = Standards::build(descriptions, published::shipped_tables());
    REQUIRE_FALSE(built);
    REQUIRE(built.error().size() == 3);
    CHECK(built.error()[0].message == "the table `gone.csv` is not there");
    CHECK(built.error()[1].norm == "who-2006");
    CHECK(built.error()[2].message == "the norm `intergrowth-newborn` is described twice");
}

TEST_CASE("norms are found by id") {
    CHECK(size_standards().find("who-2006")->clock() == Clock::age_day);
    CHECK(size_standards().find("who-2007") == nullptr);
    CHECK(size_standards().norms().size() == 5);
}

TEST_CASE("a curve has one point for every day of its table and does not cross its neighbours") {
    auto const* norm = size_standards().find("intergrowth-newborn");
    auto const middle = curve(*norm, "weight", Sex::male, 0);
    auto const low = curve(*norm, "weight", Sex::male, -2);
    auto const high = curve(*norm, "weight", Sex::male, 2);
    REQUIRE(middle.size() == 70);
    CHECK(middle.front().key == 231);
    CHECK(middle.back().key == 300);
    for (std::size_t i = 0; i < middle.size(); ++i) {
        CHECK(low[i].value < middle[i].value);
        CHECK(middle[i].value < high[i].value);
    }
    CHECK(curve(*size_standards().find("who-2006"), "length", Sex::female, 0).size() == 183);
    CHECK(curve(*size_standards().find("olsen-2010"), "length", Sex::female, 0).size() == 19);
    CHECK(
        curve(*size_standards().find("intergrowth-very-preterm"), "weight", Sex::male, 1).size() ==
        63);
}

TEST_CASE("there is no curve without a table, a clock, or the measure") {
    CHECK(curve(*size_standards().find("fenton-2013"), "weight", Sex::male, 0).empty());
    CHECK(curve(*size_standards().find("who-2006"), "ear-length", Sex::male, 0).empty());
    CHECK(curve(*size_standards().find("intergrowth-very-preterm"), "ear-length", Sex::male, 0)
              .empty());
}

TEST_CASE("each point of a curve reads back as its z-score") {
    for (auto const* id : {"intergrowth-newborn", "intergrowth-very-preterm", "who-2006"}) {
        auto const* norm = size_standards().find(id);
        for (auto const& at : curve(*norm, "weight", Sex::female, -2.5)) {
            CHECK(*z_at(*norm->scale, {"weight", Sex::female, at.key}, at.value) ==
                  doctest::Approx(-2.5).epsilon(1e-8));
        }
    }
}
