// SPDX-License-Identifier: MIT
// Numbers that others printed, typed in with their sources, so that a plain clone checks them.
// norms_worked_examples_test.cpp reads the whole collection where the folder of facts is present;
// the first number of each row is its number there.
#include <cmath>

#include "../norms/published.h"
#include "norms/normal.h"
#include "testing.h"

using namespace asterism::norms;

namespace {

constexpr auto female = Sex::female;
constexpr auto male = Sex::male;
constexpr auto head = "head-circumference";
constexpr auto length = "length";
constexpr auto weight = "weight";

enum class Ask { z, probability, value_at_z, value_at_p, median };

/// One printed number. `key` is the day of gestation or age, for Olsen the completed week.
struct Example {
    int number;
    char const* measure;
    Sex sex;
    int key;
    Ask ask;
    double input;
    double expected;
    double tolerance;  // the source's print precision, or its own test's
};

/// The same with its LMS parameters, for tables that are not shipped.
struct LmsExample {
    int number;
    char const* measure;
    Sex sex;
    int key;
    Ask ask;
    double input;
    double expected;
    double tolerance;
    Lms lms;
};

double answer(Scale const& scale, Place place, Ask ask, double input) {
    switch (ask) {
        case Ask::z: return z_at(scale, place, input).value();
        case Ask::probability: return normal_tails(z_at(scale, place, input).value()).lower;
        case Ask::value_at_z: return value_at(scale, place, input).value();
        case Ask::value_at_p: return value_at(scale, place, z_of_centile(100 * input)).value();
        default: return value_at(scale, place, 0).value();
    }
}

void check(Example const& example, char const* norm) {
    CAPTURE(example.number);
    auto const* found = published::size_standards().find(norm);
    REQUIRE(found != nullptr);
    Place const place{example.measure, example.sex, example.key};
    auto const got = answer(*found->scale, place, example.ask, example.input);
    CHECK(std::abs(got - example.expected) <= example.tolerance);
}

// ropensci/gigs at ef38f81, README: printed output of another implementation, 7 to 9 digits.
constexpr Example newborn_output[] = {
    {1, weight, male, 273, Ask::probability, 2.3, 0.010765424, 5e-09},
    {2, weight, female, 250, Ask::probability, 1.5, 0.002833163, 5e-09},
    {3, weight, female, 238, Ask::probability, 2.39, 0.756367868, 5e-09},
    {4, weight, female, 240, Ask::probability, 1.8, 0.126440075, 5e-09},
    {5, length, male, 273, Ask::z, 42.0666667, -3.5406446, 1e-06},
    {6, length, female, 250, Ask::z, 42.0333333, -2.2854751, 1e-06},
    {7, length, female, 238, Ask::z, 43.4666667, -0.6087434, 1e-06},
    {8, length, female, 240, Ask::z, 41.7333333, -1.6989568, 1e-06},
};

// The same page: weight of a girl of 785 g at four gestations, and medians, printed to 2 or 3
// digits.
constexpr Example very_preterm_output[] = {
    {9, weight, female, 175, Ask::probability, 0.785, 0.75, 0.005},
    {10, weight, female, 182, Ask::probability, 0.785, 0.5, 0.005},
    {11, weight, female, 189, Ask::probability, 0.785, 0.25, 0.005},
    {12, weight, female, 196, Ask::probability, 0.785, 0.09, 0.005},
    {13, weight, female, 182, Ask::value_at_z, 0, 0.785, 0.0005},
    {14, weight, female, 189, Ask::value_at_z, 0, 0.893, 0.0005},
    {15, weight, female, 196, Ask::value_at_z, 0, 1.013, 0.0005},
    {16, weight, female, 203, Ask::value_at_z, 0, 1.147, 0.0005},
};

// The INTERGROWTH-21st day tables as published (Villar 2014, 2016), in two separate copies:
// nutriverse/intergrowth at 2b38cfc and ropensci/gigs at ef38f81. One unit of the last digit is
// allowed, because a few printed values differ by one from what the parameters give.
constexpr Example newborn_day_tables[] = {
    {95, head, female, 262, Ask::value_at_z, -3, 29.1, 0.06},
    {96, head, female, 262, Ask::value_at_z, -2, 30.5, 0.06},
    {97, head, female, 262, Ask::value_at_z, 0, 32.8, 0.06},
    {98, head, female, 262, Ask::value_at_z, 2, 35.3, 0.06},
    {99, head, male, 262, Ask::value_at_z, -3, 29.4, 0.06},
    {100, head, male, 262, Ask::value_at_z, -2, 30.8, 0.06},
    {101, head, male, 262, Ask::value_at_z, 0, 33.2, 0.06},
    {102, head, male, 262, Ask::value_at_z, 2, 35.8, 0.06},
    {103, head, female, 280, Ask::value_at_z, -3, 30.3, 0.06},
    {104, head, female, 280, Ask::value_at_z, -2, 31.6, 0.06},
    {105, head, female, 280, Ask::value_at_z, 0, 33.8, 0.06},
    {106, head, female, 280, Ask::value_at_z, 2, 36.1, 0.06},
    {107, head, male, 280, Ask::value_at_z, -3, 30.7, 0.06},
    {108, head, male, 280, Ask::value_at_z, -2, 32.0, 0.06},
    {109, head, male, 280, Ask::value_at_z, 0, 34.3, 0.06},
    {110, head, male, 280, Ask::value_at_z, 2, 36.7, 0.06},
    {111, weight, female, 280, Ask::value_at_z, -3, 2.06, 0.012},
    {112, weight, female, 280, Ask::value_at_z, -2, 2.5, 0.012},
    {113, weight, female, 280, Ask::value_at_z, 0, 3.26, 0.012},
    {114, weight, female, 280, Ask::value_at_z, 2, 4.14, 0.012},
    {115, weight, male, 252, Ask::value_at_z, -3, 1.39, 0.012},
    {116, weight, male, 252, Ask::value_at_z, -2, 1.88, 0.012},
    {117, weight, male, 252, Ask::value_at_z, 0, 2.69, 0.012},
    {118, weight, male, 252, Ask::value_at_z, 2, 3.6, 0.012},
    {119, length, male, 266, Ask::value_at_z, -3, 42.7, 0.06},
    {120, length, male, 266, Ask::value_at_z, -2, 45.0, 0.06},
    {121, length, male, 266, Ask::value_at_z, 0, 48.6, 0.06},
    {122, length, male, 266, Ask::value_at_z, 2, 52.2, 0.06},
    {123, length, female, 294, Ask::value_at_z, -3, 45.0, 0.06},
    {124, length, female, 294, Ask::value_at_z, -2, 47.0, 0.06},
    {125, length, female, 294, Ask::value_at_z, 0, 50.2, 0.06},
    {126, length, female, 294, Ask::value_at_z, 2, 53.3, 0.06},
    {131, head, male, 231, Ask::value_at_z, -3, 26.5, 0.06},
    {132, head, male, 231, Ask::value_at_z, -2, 28.1, 0.06},
    {133, head, male, 231, Ask::value_at_z, 0, 30.9, 0.06},
    {134, head, male, 231, Ask::value_at_z, 2, 33.8, 0.06},
};
constexpr Example very_preterm_day_tables[] = {
    {127, head, female, 230, Ask::value_at_z, -3, 25.3, 0.06},
    {128, head, female, 230, Ask::value_at_z, -2, 26.8, 0.06},
    {129, head, female, 230, Ask::value_at_z, 0, 30.0, 0.06},
    {130, head, female, 230, Ask::value_at_z, 2, 33.1, 0.06},
};

// WHO expanded z-score tables, columns SD4 and SD4neg, as carried by ropensci/gigs at ef38f81:
// for weight they obey the tail rule beyond 3 SD, for the head there is none.
constexpr Example who_fourth_sd[] = {
    {186, weight, male, 0, Ask::z, 1.701, -4, 0.005},
    {187, weight, male, 0, Ask::z, 5.642, 4, 0.005},
    {188, weight, male, 28, Ask::z, 2.404, -4, 0.005},
    {189, weight, male, 28, Ask::z, 7.187, 4, 0.005},
    {190, weight, male, 91, Ask::z, 3.846, -4, 0.005},
    {191, weight, male, 91, Ask::z, 9.909, 4, 0.005},
    {192, weight, female, 0, Ask::z, 1.671, -4, 0.005},
    {193, weight, female, 0, Ask::z, 5.356, 4, 0.005},
    {194, weight, female, 28, Ask::z, 2.243, -4, 0.005},
    {195, weight, female, 28, Ask::z, 6.857, 4, 0.005},
    {196, weight, female, 91, Ask::z, 3.443, -4, 0.005},
    {197, weight, female, 91, Ask::z, 9.499, 4, 0.005},
    {198, head, male, 0, Ask::z, 29.381, -4, 0.005},
    {199, head, male, 0, Ask::z, 39.543, 4, 0.005},
    {200, head, male, 28, Ask::z, 32.422, -4, 0.005},
    {201, head, male, 28, Ask::z, 41.763, 4, 0.005},
    {202, head, male, 91, Ask::z, 35.774, -4, 0.005},
    {203, head, male, 91, Ask::z, 45.228, 4, 0.005},
    {204, head, female, 0, Ask::z, 29.141, -4, 0.005},
    {205, head, female, 0, Ask::z, 38.616, 4, 0.005},
    {206, head, female, 28, Ask::z, 31.698, -4, 0.005},
    {207, head, female, 28, Ask::z, 41.054, 4, 0.005},
    {208, head, female, 91, Ask::z, 34.557, -4, 0.005},
    {209, head, female, 91, Ask::z, 44.485, 4, 0.005},
};

// WHO length-for-age centile tables (hafen/growthstandards at 59b171f, tests), printed to 1 digit;
// the last row is from the tests of the WHO's own package.
constexpr Example who_length[] = {
    {153, length, female, 0, Ask::value_at_p, 0.5, 49.1, 0.05},
    {154, length, female, 7, Ask::value_at_p, 0.5, 50.3, 0.05},
    {158, length, female, 0, Ask::value_at_p, 0.01, 44.8, 0.05},
    {163, length, female, 0, Ask::value_at_p, 0.99, 53.5, 0.05},
    {168, length, male, 0, Ask::value_at_p, 0.5, 49.9, 0.05},
    {173, length, male, 0, Ask::value_at_p, 0.01, 45.5, 0.05},
    {178, length, male, 0, Ask::value_at_p, 0.99, 54.3, 0.05},
    {182, length, male, 28, Ask::value_at_p, 0.99, 58.9, 0.05},
    {183, length, male, 44, Ask::z, 50, -3.29, 0.005},
};

// Two copies of the Olsen 2010 rows agree (jhchou/peditools at c9f622b, cran/childsds at
// 1be6bd4): the right row is read, no independent z-score was found.
constexpr Example olsen_rows[] = {
    {214, weight, male, 37, Ask::median, 0, 3056.0, 1e-09},
    {215, head, female, 37, Ask::median, 0, 33.289, 1e-09},
    {216, length, male, 30, Ask::median, 0, 40.11, 1e-09},
};

// Fenton 2013, z-scores read off an independent calculator (devinem4/pretermgrowth at 8fb3aec).
constexpr LmsExample fenton_calculator[] = {
    {135, length, male, 280, Ask::z, 54, 1.27, 0.005, {1.0, 51.15833708, 0.043850773}},
    {136, weight, male, 280, Ask::z, 2400, -2.71, 0.005, {0.528601402, 3567.904128, 0.131756907}},
    {137, head, male, 280, Ask::z, 33, -1.44, 0.005, {1.0, 35.04346932, 0.04058575}},
    {138, length, female, 277, Ask::z, 54, 1.71, 0.005, {1.0, 50.05772657, 0.0460224}},
    {139, weight, female, 277, Ask::z, 2400, -2.17, 0.005, {0.185024438, 3340.275942, 0.14793035}},
    {140, head, female, 277, Ask::z, 33, -1.06, 0.005, {1.0, 34.47204142, 0.040198407}},
};

// WHO weights at ages beyond the shipped table, with their LMS: the WHO's own package
// (WorldHealthOrganization/anthro at b776d8a) and Grellety E, figshare 4294085 (2016).
constexpr LmsExample who_later_weight[] = {
    {184, weight, female, 1522, Ask::z, 17, 0.24, 0.005, {-0.3387, 16.433, 0.14051}},
    {185, weight, female, 365, Ask::z, 9, 0.048847178, 5e-09, {-0.2022, 8.9462, 0.12267}},
    {210, weight, male, 1001, Ask::z, 18, 2.2, 0.005, {-0.0559, 13.8114, 0.11946}},
    {211, weight, female, 1000, Ask::z, 15, 0.95, 0.005, {-0.3153, 13.256, 0.12729}},
    {212, weight, male, 1010, Ask::z, 10, -2.76, 0.005, {-0.0572, 13.8625, 0.11963}},
    {213, weight, male, 1000, Ask::z, 15, 0.69, 0.005, {-0.0558, 13.8057, 0.11945}},
};

template <class Examples>
void check_all(Examples const& examples, char const* norm) {
    for (auto const& example : examples) check(example, norm);
}

/// All of these lie within 3 SD, where the tail rule changes nothing.
void check(LmsExample const& example) {
    CAPTURE(example.number);
    REQUIRE(example.ask == Ask::z);
    auto const z = lms_z(example.input, example.lms);
    REQUIRE(z);
    CHECK(std::abs(*z - example.expected) <= example.tolerance);
}

}  // namespace

TEST_CASE("INTERGROWTH newborn: printed output of another implementation") {
    check_all(newborn_output, "intergrowth-newborn");
}

TEST_CASE("INTERGROWTH very preterm: printed output of another implementation") {
    check_all(very_preterm_output, "intergrowth-very-preterm");
}

TEST_CASE("INTERGROWTH newborn: published day tables") {
    check_all(newborn_day_tables, "intergrowth-newborn");
}

TEST_CASE("INTERGROWTH very preterm: published day tables") {
    check_all(very_preterm_day_tables, "intergrowth-very-preterm");
}

TEST_CASE("WHO: fourth SD of weight and head") { check_all(who_fourth_sd, "who-2006"); }

TEST_CASE("WHO: published centiles of length") { check_all(who_length, "who-2006"); }

TEST_CASE("Olsen: the row of a completed week") { check_all(olsen_rows, "olsen-2010"); }

TEST_CASE("Fenton: an independent calculator") {
    for (auto const& example : fenton_calculator) check(example);
}

TEST_CASE("WHO: weights of older children, for the mathematics") {
    for (auto const& example : who_later_weight) check(example);
}

TEST_CASE("at least 60 printed numbers stand in this file") {
    CHECK(std::size(newborn_output) + std::size(very_preterm_output) +
              std::size(newborn_day_tables) + std::size(very_preterm_day_tables) +
              std::size(who_fourth_sd) + std::size(who_length) + std::size(olsen_rows) +
              std::size(fenton_calculator) + std::size(who_later_weight) >=
          60);
}
