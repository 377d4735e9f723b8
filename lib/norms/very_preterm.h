// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>

#include "norms/days.h"
#include "norms/sex.h"

namespace asterism::norms {

/// One equation of the INTERGROWTH-21st very preterm reference (Villar J et al. Lancet
/// 2016;387:844-845): the value, or its natural logarithm, is normal with a mean that grows with
/// exact weeks or with their square root.
struct VeryPreterm {
    std::string measure{};
    std::string unit{};
    bool logarithm_of_value = false;
    bool root_of_weeks = false;
    double intercept = 0;
    double per_week = 0;
    double for_boys = 0;
    double variance = 1;  ///< > 0
    DayRange days{};      ///< gestation the equation was made for
};

/// z-score of `value` at `day` of gestation; weeks are exact, days / 7. Nothing when the value has
/// no logarithm. The range of days is the caller's to check. `sex` is female or male.
[[nodiscard]] std::optional<double> very_preterm_z(double value, VeryPreterm const& equation,
                                                   Sex sex, int day);

/// The inverse: the value at `z`.
[[nodiscard]] double very_preterm_value(double z, VeryPreterm const& equation, Sex sex, int day);

}  // namespace asterism::norms
