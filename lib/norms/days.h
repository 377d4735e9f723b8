// SPDX-License-Identifier: MIT
#pragma once

#include <chrono>
#include <string>

namespace asterism::norms {

/// A closed range of whole days, of gestation or of age. One known day has first == last.
struct DayRange {
    int first = 0;
    int last = 0;

    friend bool operator==(DayRange const&, DayRange const&) = default;
};

/// `weeks` and `days` (0 to 6) of gestation as one known day.
[[nodiscard]] DayRange gestation(int weeks, int days);

/// Completed weeks whose days were not recorded: all seven days are possible, none is assumed.
[[nodiscard]] DayRange completed_weeks(int weeks);

[[nodiscard]] bool contains(DayRange outer, DayRange inner);
[[nodiscard]] bool overlap(DayRange a, DayRange b);

/// Age rounded to the nearest whole day, half a day upwards, as the WHO macros do.
[[nodiscard]] int nearest_day(std::chrono::hours age);

/// Completed days of age.
[[nodiscard]] int completed_days(std::chrono::hours age);

/// `262` becomes "37w3d".
[[nodiscard]] std::string gestation_text(int days);

/// "37w3d", or "37w0d to 37w6d" for more than one day.
[[nodiscard]] std::string gestation_text(DayRange days);

}  // namespace asterism::norms
