// SPDX-License-Identifier: MIT
#include "norms/scale.h"

#include "norms/published.h"
#include "testing.h"

using namespace asterism::norms;

namespace {

Scale const& scale_of(std::string_view norm) {
    auto const* found = published::size_standards().find(norm);
    REQUIRE(found != nullptr);
    REQUIRE(found->scale);
    return *found->scale;
}

}  // namespace

TEST_CASE("a scale says why it has no z-score") {
    auto const& newborn = scale_of("intergrowth-newborn");
    CHECK(z_at(newborn, {"weight", Sex::male, 280}, 3.4));
    CHECK(z_at(newborn, {"weight", Sex::male, 230}, 3.4).error() == Why::not_in_table);
    CHECK(z_at(newborn, {"ear-length", Sex::male, 280}, 3.4).error() == Why::not_in_table);
    CHECK(z_at(newborn, {"weight", Sex::undetermined, 280}, 3.4).error() == Why::not_in_table);
    CHECK(z_at(scale_of("who-2006"), {"weight", Sex::male, 7}, 0).error() == Why::value);
    CHECK(z_at(scale_of("intergrowth-very-preterm"), {"weight", Sex::male, 231}, 1).error() ==
          Why::not_in_table);
    // So far out that the tail probability is zero even as the smallest double.
    CHECK(z_at(newborn, {"weight", Sex::male, 280}, -1e200).error() == Why::beyond);
}

TEST_CASE("value and z-score invert each other on every kind of scale") {
    Scale const mean_sd = MeanSdScale{{-2.27, 0.16, 0.4}};
    struct Case {
        Scale const* scale;
        Place place;
    };
    Case const cases[] = {{&scale_of("intergrowth-newborn"), {"length", Sex::male, 250}},
                          {&scale_of("intergrowth-very-preterm"), {"weight", Sex::female, 200}},
                          {&scale_of("who-2006"), {"weight", Sex::female, 30}},
                          {&scale_of("olsen-2010"), {"head-circumference", Sex::male, 35}},
                          {&mean_sd, {"penile-length", Sex::undetermined, 210}}};
    for (auto const& one : cases) {
        for (double z = -4; z <= 4; z += 0.5) {
            auto const value = value_at(*one.scale, one.place, z);
            REQUIRE(value);
            CHECK(*z_at(*one.scale, one.place, *value) ==
                  doctest::Approx(z).epsilon(1e-8).scale(1));
        }
    }
}

TEST_CASE("no value where there is no place or no such z") {
    CHECK_FALSE(value_at(scale_of("intergrowth-newborn"), {"weight", Sex::male, 301}, 0));
    CHECK_FALSE(value_at(scale_of("who-2006"), {"weight", Sex::male, 183}, 0));
    CHECK_FALSE(value_at(scale_of("intergrowth-very-preterm"), {"weight", Sex::male, 167}, 0));
    CHECK_FALSE(value_at(scale_of("olsen-2010"), {"head-circumference", Sex::male, 35}, -100));
}

TEST_CASE("only mean and SD is the same for both sexes") {
    CHECK(is_by_sex(scale_of("intergrowth-newborn")));
    CHECK(is_by_sex(scale_of("intergrowth-very-preterm")));
    CHECK(is_by_sex(scale_of("who-2006")));
    CHECK_FALSE(is_by_sex(MeanSdScale{{36, 0, 3}}));
}

TEST_CASE("keys and units come from the table, and mean and SD has neither") {
    CHECK(keys_of(scale_of("who-2006"), "length", Sex::male) == DayRange{0, 182});
    CHECK(keys_of(scale_of("intergrowth-very-preterm"), "length", Sex::male) == DayRange{168, 230});
    CHECK_FALSE(keys_of(MeanSdScale{{36, 0, 3}}, "ear-length", Sex::male));
    CHECK(*unit_of(scale_of("intergrowth-very-preterm"), "weight") == "kg");
    CHECK(unit_of(MeanSdScale{{36, 0, 3}}, "ear-length") == nullptr);
}
