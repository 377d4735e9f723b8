// SPDX-License-Identifier: MIT
#include "audit/agreement.h"

#include <cmath>
#include <optional>
#include <string_view>
#include <vector>

#include "testing.h"

using namespace asterism::audit;

namespace {

/// A published or worked table: both yes, first only, second only, both no.
struct Example {
    std::string_view source;
    FourCells cells;
    double agreed, kappa, ac1, adjusted;
};

// Values to four decimals, recomputed from the cells by a script outside the project; what each
// paper or book prints is named beside it.
Example const examples[] = {
    // Prints .70.
    {"Feinstein & Cicchetti 1990, J Clin Epidemiol 43:543, first table",
     {40, 9, 6, 45},
     .85,
     .6995,
     .7007,
     .70},
    // Prints .32.
    {"Feinstein & Cicchetti 1990, second table", {80, 10, 5, 5}, .85, .3182, .8080, .70},
    // Prints .524.
    {"Epidemiology Kept Simple, example 10.1 (cells from its margins)",
     {1467, 782, 1309, 16232},
     .8943,
     .5241,
     .8642,
     .7887},
    {"common textbook example, from memory", {20, 5, 10, 15}, .70, .4000, .4059, .40},
    {"pair of tables with the same agreement, from memory",
     {45, 15, 25, 15},
     .60,
     .1304,
     .2661,
     .20},
    {"pair of tables with the same agreement, from memory",
     {25, 35, 5, 35},
     .60,
     .2593,
     .2079,
     .20},
    // Prints kappa -.0234 and AC1 .9408, from memory.
    {"Gwet 2002", {118, 5, 2, 0}, .944, -.0234, .9408, .888},
    // Prints .67, from memory.
    {"Sim & Wright 2005, Phys Ther 85:257", {22, 2, 4, 11}, .8462, .6667, .7150, .6923},
};

bool near(double a, double b, double within = 0.00005) { return std::abs(a - b) <= within; }

}  // namespace

TEST_CASE("coefficients of published two by two tables") {
    for (auto const& example : examples) {
        CAPTURE(example.source);
        auto const table = example.cells.table();
        CHECK(near(table.agreed(), example.agreed));
        CHECK(near(cohen_kappa(table)->value, example.kappa));
        CHECK(near(gwet_ac1(table)->value, example.ac1));
        CHECK(near(prevalence_adjusted_kappa(example.cells), example.adjusted));
    }
}

TEST_CASE(
    "indices, agreement on yes and no, and errors of the second Feinstein & Cicchetti table") {
    // Recomputed from the cells by a script outside the project.
    FourCells const cells{80, 10, 5, 5};
    CHECK(near(prevalence_index(cells), .75));
    CHECK(near(bias_index(cells), .05));
    CHECK(near(*positive_agreement(cells), .9143));
    CHECK(near(*negative_agreement(cells), .40));
    CHECK(near(*largest_kappa(cells), .7727));
    CHECK(near(cohen_kappa(cells.table())->error, .1335));  // Fleiss, Cohen & Everitt 1969
}

TEST_CASE("three categories: the table of Cohen 1968") {
    // Prints kappa .492; the rest recomputed from the cells by a script outside the project.
    SquareTable const table({{88, 14, 18}, {10, 40, 10}, {2, 6, 12}});
    CHECK(table.total() == 200);
    CHECK(near(table.agreed(), .70));
    CHECK(near(cohen_kappa(table)->value, .4915));
    CHECK(near(cohen_kappa(table)->error, .0510));
    CHECK(near(gwet_ac1(table)->value, .5760));
}

TEST_CASE("the variance of AC1 is that of the delta method") {
    // Gwet 2008 derives it by linearisation: compare with the jackknife, which takes each subject
    // away in turn and knows nothing of the formula. They differ by terms of order 1/n.
    for (auto const& example : examples) {
        auto const& c = example.cells;
        CAPTURE(example.source);
        double const n = static_cast<double>(c.total()), whole = gwet_ac1(c.table())->value;
        double sum = 0;
        auto const without = [&](std::uint64_t count, FourCells left) {
            if (count == 0) return;
            double const change = gwet_ac1(left.table())->value - whole;
            sum += static_cast<double>(count) * change * change;
        };
        without(c.both, {c.both - 1, c.first_only, c.second_only, c.neither});
        without(c.first_only, {c.both, c.first_only - 1, c.second_only, c.neither});
        without(c.second_only, {c.both, c.first_only, c.second_only - 1, c.neither});
        without(c.neither, {c.both, c.first_only, c.second_only, c.neither - 1});
        double const jackknife = std::sqrt(sum * (n - 1) / n);
        CHECK(gwet_ac1(c.table())->error == doctest::Approx(jackknife).epsilon(3 / n));
    }
}

TEST_CASE("agreement without anything to agree on") {
    CHECK_FALSE(cohen_kappa(FourCells{0, 0, 0, 0}.table()));
    CHECK_FALSE(gwet_ac1(FourCells{0, 0, 0, 0}.table()));
    CHECK_FALSE(cohen_kappa(FourCells{0, 0, 0, 500}.table()));  // one category: no chance to beat
    CHECK(gwet_ac1(FourCells{0, 0, 0, 500}.table())->value == 1);
    CHECK_FALSE(positive_agreement({0, 0, 0, 500}));
    CHECK(cohen_kappa(FourCells{7, 0, 0, 9}.table())->interval().high == 1);
}

TEST_CASE("words of Landis and Koch") {
    CHECK(strength_of_agreement(-.01) == "poor");
    CHECK(strength_of_agreement(0) == "slight");
    CHECK(strength_of_agreement(.20) == "slight");
    CHECK(strength_of_agreement(.21) == "fair");
    CHECK(strength_of_agreement(.40) == "fair");
    CHECK(strength_of_agreement(.60) == "moderate");
    CHECK(strength_of_agreement(.61) == "substantial");
    CHECK(strength_of_agreement(.81) == "almost perfect");
    CHECK(strength_of_agreement(1) == "almost perfect");
}
