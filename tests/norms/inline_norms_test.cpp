// SPDX-License-Identifier: MIT
// Norms whose numbers stand in their description: mean and SD, printed centiles, cut-offs.
#include "norms/published.h"
#include "norms/reading.h"
#include "testing.h"

using namespace asterism::norms;

namespace {

NormDescription described(std::string id, std::string measure, Kind kind, std::string unit) {
    NormDescription norm;
    norm.norm = std::move(id);
    norm.measures = {std::move(measure)};
    norm.kind = kind;
    norm.unit = std::move(unit);
    return norm;
}

Answer read(NormDescription const& description, Query const& query) {
    auto const norm = make_norm(description, {});
    REQUIRE(norm);
    return read_norm(*norm, query);
}

/// Feldman and Smith 1975.
NormDescription penile_length() {
    auto norm = described("penile-length-feldman", "penile-length", Kind::mean_sd, "cm");
    norm.sex = Sex::male;
    norm.mean = 3.5;
    norm.sd = 0.4;
    norm.cut_offs = {{Relation::below, 2.5, "more than 2.5 SD below the mean"}};
    norm.windows = {{DayRange{259, 300}, {}, {}}};
    return norm;
}

Query penis(double value, Sex sex, double margin = 0) {
    Query query{"penile-length", value, "cm", margin, sex};
    query.gestation = gestation(39, 0);
    return query;
}

/// Faridi and Dhingra 2013.
NormDescription internipple() {
    auto norm =
        described("internipple-distance-faridi", "internipple-distance", Kind::centiles, "cm");
    norm.centiles = {{3, 7.3}, {97, 9.5}};
    return norm;
}

}  // namespace

TEST_CASE("penile length on both sides of 2.5 cm") {
    auto const below = read(penile_length(), penis(2.4, Sex::male));
    REQUIRE(below);
    CHECK(below->z->low == doctest::Approx(-2.75));
    CHECK(below->crossings.front().beyond == true);
    CHECK(below->crossings.front().unit == "cm");
    CHECK(read(penile_length(), penis(2.5, Sex::male))->crossings.front().beyond == false);
    CHECK(read(penile_length(), penis(2.6, Sex::male))->crossings.front().beyond == false);
    auto const borderline = read(penile_length(), penis(2.5, Sex::male, 0.05));
    CHECK(borderline->crossings.front().beyond == std::nullopt);
}

TEST_CASE("a norm of one sex says nothing of the other, nor of a baby whose sex is open") {
    auto const girl = read(penile_length(), penis(2.4, Sex::female));
    REQUIRE_FALSE(girl);
    CHECK(girl.error() ==
          NoNorm{"penile-length-feldman", Why::sex, "for boys; this one is female"});
    auto const open = read(penile_length(), penis(2.4, Sex::undetermined));
    REQUIRE_FALSE(open);
    CHECK(open.error().reason == "for boys; the sex is undetermined or not given");
    auto norm = penile_length();
    norm.sex = Sex::female;
    CHECK(read(norm, penis(2.4, Sex::male)).error().reason == "for girls; this one is male");
}

TEST_CASE("a norm for both sexes does not ask for the sex") {
    auto norm = described("ear-length-lian", "ear-length", Kind::mean_sd, "mm");
    norm.mean = 36;
    norm.sd = 3;
    auto const reading = read(norm, {"ear-length", 3, "cm"});
    REQUIRE(reading);
    CHECK(reading->z->low == doctest::Approx(-2));
    CHECK(reading->centile->low == doctest::Approx(2.275).epsilon(0.001));
    REQUIRE(reading->evaluations.size() == 1);
    CHECK(reading->evaluations[0].sex == Sex::undetermined);
}

TEST_CASE("a mean that rises with gestation is a band when the days are missing") {
    auto norm = described("penile-length-tuladhar", "penile-length", Kind::mean_sd, "cm");
    norm.mean = -2.27;
    norm.mean_per_week = 0.16;
    norm.sd = 0.4;
    norm.clock = Clock::gestation_day;
    Query query{"penile-length", 1.5, "cm", 0, Sex::male, completed_weeks(30)};
    auto const reading = read(norm, query);
    REQUIRE(reading);
    CHECK(reading->z->high == doctest::Approx((1.5 - 2.53) / 0.4));
    CHECK(reading->z->low == doctest::Approx((1.5 - 2.53 - 0.16 * 6 / 7) / 0.4));
    query.gestation.reset();
    CHECK(read(norm, query).error().why == Why::gestation_unknown);
}

TEST_CASE("printed centiles give a bracket and no z-score") {
    auto const reading = read(internipple(), {"internipple-distance", 95, "mm", 0.5});
    REQUIRE(reading);
    CHECK_FALSE(reading->z);
    CHECK(reading->evaluations.empty());
    CHECK(reading->centile == Band{3, 100});
    CHECK(read(internipple(), {"internipple-distance", 9.5, "cm"})->centile == point(97));
    CHECK(read(internipple(), {"internipple-distance", 7.0, "cm"})->centile == Band{0, 3});
}

TEST_CASE("a plain cut-off gives neither z-score nor centile, only its side") {
    auto norm = described("sacral-dimple-width-kriss", "sacral-dimple-width", Kind::cut_off, "mm");
    norm.cut_offs = {{Relation::above, 5, "atypical"}};
    auto const wide = read(norm, {"sacral-dimple-width", 6, "mm"});
    REQUIRE(wide);
    CHECK_FALSE(wide->z);
    CHECK_FALSE(wide->centile);
    CHECK(wide->crossings.front().beyond == true);
    CHECK(read(norm, {"sacral-dimple-width", 0.5, "cm"})->crossings.front().beyond == false);
    CHECK(read(norm, {"sacral-dimple-width", 5, "mm", 0.5})->crossings.front().beyond ==
          std::nullopt);
}

TEST_CASE("two limits of one norm are judged each for itself") {
    auto norm = described("clitoral-length-castets", "clitoral-length", Kind::mean_sd, "mm");
    norm.mean = 3.69;
    norm.sd = 1.53;
    norm.cut_offs = {{Relation::above, 6.5, "long"}, {Relation::at_least, 8, "to be investigated"}};
    auto const seven = read(norm, {"clitoral-length", 7, "mm"});
    CHECK(seven->crossings[0].beyond == true);
    CHECK(seven->crossings[1].beyond == false);
    auto const eight = read(norm, {"clitoral-length", 8, "mm"});
    CHECK(eight->crossings[1].beyond == true);
}
