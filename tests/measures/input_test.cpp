// SPDX-License-Identifier: MIT
#include "measures/measuring.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

void has(std::string const& text, std::string const& part) {
    INFO(text);
    CHECK(text.find(part) != std::string::npos);
}

}  // namespace

TEST_CASE("a head of 335 cm is refused with the unit that was meant") {
    auto const problems = case_problems("measures: { head-circumference: 335 cm }\n");
    has(problems, "case.yaml:1:");
    has(problems, "did you mean `335 mm`");
}

TEST_CASE("a weight of 3.1 g is refused with kilograms") {
    has(case_problems("measures: { weight: 3.1 g }\n"), "did you mean `3.1 kg`");
}

TEST_CASE("decimal weeks of gestation are refused") {
    CHECK_FALSE(case_problems("gestation: 37.3\nmeasures: { weight: 3100 g }\n").empty());
    CHECK(case_problems("gestation: 37w3d\nmeasures: { weight: 3100 g }\n").empty());
}

TEST_CASE("a number without a unit, or in the unit of something else, is refused") {
    has(case_problems("measures: { weight: 3100 }\n"), "has no unit");
    has(case_problems("measures: { weight: 3100 cm }\n"), "unknown unit `cm`");
}

TEST_CASE("an unknown measure is refused with the nearest name") {
    has(case_problems("measures: { head-circumfrence: 33 cm }\n"), "head-circumference");
}

TEST_CASE("pounds and ounces, inches, rates, percent and mmHg are read") {
    auto const weight = shipped().reading("measures: { weight: 6 lb 4 oz }\n", "weight");
    CHECK(weight.as_read.low == doctest::Approx(2834.95).epsilon(0.0001));
    auto const head =
        shipped().reading("measures: { head-circumference: 13 in }\n", "head-circumference");
    CHECK(head.as_read.low == doctest::Approx(33.02));
    for (auto const* text :
         {"heart-rate: 148 /min", "pre-ductal-saturation: 96 %", "right-arm-pressure: 64 mmHg"})
        CHECK(case_problems(std::string("measures: { ") + text + " }\n").empty());
}
