// SPDX-License-Identifier: MIT
#include "norms/very_preterm.h"

#include <cmath>

namespace asterism::norms {
namespace {

double mean(VeryPreterm const& equation, Sex sex, int day) {
    auto const weeks = day / 7.0;
    auto const grown = equation.root_of_weeks ? std::sqrt(weeks) : weeks;
    return equation.intercept + equation.per_week * grown +
           (sex == Sex::male ? equation.for_boys : 0);
}

}  // namespace

std::optional<double> very_preterm_z(double value, VeryPreterm const& equation, Sex sex, int day) {
    if (equation.logarithm_of_value && !(value > 0)) return std::nullopt;
    auto const scaled = equation.logarithm_of_value ? std::log(value) : value;
    return (scaled - mean(equation, sex, day)) / std::sqrt(equation.variance);
}

double very_preterm_value(double z, VeryPreterm const& equation, Sex sex, int day) {
    auto const scaled = mean(equation, sex, day) + z * std::sqrt(equation.variance);
    return equation.logarithm_of_value ? std::exp(scaled) : scaled;
}

}  // namespace asterism::norms
