// SPDX-License-Identifier: MIT
#pragma once

#include <chrono>
#include <string>
#include <string_view>

#include <tl/expected.hpp>

namespace asterism {

/// A parsed value, or a message in the words of a diagnostic (lower case, no final stop).
template <class T>
using Parsed = tl::expected<T, std::string>;

/// Gestational age at birth in whole days. Weeks without days are a band of seven days, never week
/// + 0.
struct Gestation {
    int min_days = 0;
    int max_days = 0;

    bool exact() const { return min_days == max_days; }
    friend bool operator==(Gestation const&, Gestation const&) = default;
};

/// Reads `38w4d`, `38+4`, `38 weeks 4 days` or `38w` (a band). Decimal weeks are refused
/// because 37.3 may mean 37 weeks 3 days or 37.3 weeks. Range 20w0d to 45w6d.
Parsed<Gestation> parse_gestation(std::string_view text);
/// `38w4d`, or `38w` for a band of one whole week.
std::string to_text(Gestation gestation);

/// Age after birth or any span of time, in whole hours.
struct Duration {
    int hours = 0;

    friend auto operator<=>(Duration const&, Duration const&) = default;
};

/// Reads `26h`, `3d`, `2w`, `6m` (months of 30.4375 days), `1y`, and sums such as `1d 6h`; whole
/// numbers only.
Parsed<Duration> parse_duration(std::string_view text);
/// In the largest unit that is exact: `26h`, `3d`, `2w`.
std::string to_text(Duration duration);

using Date = std::chrono::year_month_day;

/// Reads `2031-04-02`; dates that the calendar lacks are refused.
Parsed<Date> parse_date(std::string_view text);
std::string to_text(Date date);
Date add(Date date, Duration duration);

}  // namespace asterism
