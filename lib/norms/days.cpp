// SPDX-License-Identifier: MIT
#include "norms/days.h"

namespace asterism::norms {

DayRange gestation(int weeks, int days) { return {7 * weeks + days, 7 * weeks + days}; }

DayRange completed_weeks(int weeks) { return {7 * weeks, 7 * weeks + 6}; }

bool contains(DayRange outer, DayRange inner) {
    return outer.first <= inner.first && inner.last <= outer.last;
}

bool overlap(DayRange a, DayRange b) { return a.first <= b.last && b.first <= a.last; }

int nearest_day(std::chrono::hours age) { return completed_days(age + std::chrono::hours{12}); }

int completed_days(std::chrono::hours age) {
    return static_cast<int>(std::chrono::floor<std::chrono::days>(age).count());
}

std::string gestation_text(int days) {
    return std::to_string(days / 7) + "w" + std::to_string(days % 7) + "d";
}

std::string gestation_text(DayRange days) {
    if (days.first == days.last) return gestation_text(days.first);
    return gestation_text(days.first) + " to " + gestation_text(days.last);
}

}  // namespace asterism::norms
