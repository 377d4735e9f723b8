// SPDX-License-Identifier: MIT
#include "base/time.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <optional>
#include <vector>

#include <fmt/format.h>

#include "base/number.h"

namespace asterism {

namespace {

constexpr int least_days = 20 * 7;
constexpr int most_days = 45 * 7 + 6;
constexpr double days_a_month = 30.4375;  // the WHO growth standards' own conversion

struct Part {
    std::string number;
    std::string unit;
};

/// Splits `1d 6h` into number-unit pairs; empty when the text is not of that form.
std::vector<Part> parts_of(std::string_view text) {
    std::vector<Part> parts;
    std::size_t at = 0;
    auto const take = [&](auto wanted) {
        auto const start = at;
        while (at < text.size() && wanted(static_cast<unsigned char>(text[at]))) ++at;
        return std::string(text.substr(start, at - start));
    };
    auto const is_space = [](unsigned char c) { return c == ' '; };
    auto const is_number = [](unsigned char c) { return std::isdigit(c) || c == '.'; };
    auto const is_letter = [](unsigned char c) { return std::isalpha(c); };
    while (at < text.size()) {
        take(is_space);
        Part part{take(is_number), {}};
        take(is_space);
        part.unit = take(is_letter);
        take(is_space);
        if (part.number.empty() || (part.unit.empty() && at < text.size())) return {};
        parts.push_back(std::move(part));
    }
    return parts;
}

bool is_one_of(std::string_view unit, std::initializer_list<std::string_view> names) {
    return std::find(names.begin(), names.end(), unit) != names.end();
}

bool is_week(std::string_view unit) { return is_one_of(unit, {"w", "wk", "wks", "week", "weeks"}); }
bool is_day(std::string_view unit) { return is_one_of(unit, {"d", "day", "days"}); }

std::optional<double> hours_a(std::string_view unit) {
    if (is_one_of(unit, {"h", "hr", "hrs", "hour", "hours"})) return 1;
    if (is_day(unit)) return 24;
    if (is_week(unit)) return 24 * 7;
    if (is_one_of(unit, {"m", "mo", "month", "months"})) return 24 * days_a_month;
    if (is_one_of(unit, {"y", "yr", "year", "years"})) return 24 * days_a_month * 12;
    return std::nullopt;
}

tl::unexpected<std::string> refused(std::string message) {
    return tl::make_unexpected(std::move(message));
}

Parsed<Gestation> in_range(int min_days, int max_days) {
    if (min_days < least_days || max_days > most_days) {
        return refused("gestation is outside 20w0d to 45w6d");
    }
    return Gestation{min_days, max_days};
}

/// `38+4` is how notes are written; `38w4d` is how we print it.
std::string without_plus(std::string_view text) {
    auto const plus = text.find('+');
    if (plus == std::string_view::npos) return std::string(text);
    return fmt::format("{}w{}d", trim(text.substr(0, plus)), trim(text.substr(plus + 1)));
}

}  // namespace

Parsed<Gestation> parse_gestation(std::string_view text) {
    auto const parts = parts_of(without_plus(trim(text)));
    std::string const expected = "expected weeks and days such as `38w4d`";
    if (parts.empty() || parts.size() > 2 || !(is_week(parts[0].unit) || parts[0].unit.empty()))
        return refused(expected);
    if (parts[0].number.find('.') != std::string::npos) {
        return refused("decimal weeks are ambiguous; write weeks and days such as `38w4d`");
    }
    auto const weeks = parse_integer(parts[0].number);
    if (!weeks || *weeks > 60 || parts[0].unit.empty()) return refused(expected);
    if (parts.size() == 1) return in_range(*weeks * 7, *weeks * 7 + 6);
    auto const days = parse_integer(parts[1].number);
    if (!days || !is_day(parts[1].unit)) return refused(expected);
    if (*days > 6) return refused("days after the week run from 0 to 6");
    return in_range(*weeks * 7 + *days, *weeks * 7 + *days);
}

std::string to_text(Gestation gestation) {
    if (!gestation.exact()) return fmt::format("{}w", gestation.min_days / 7);
    return fmt::format("{}w{}d", gestation.min_days / 7, gestation.min_days % 7);
}

Parsed<Duration> parse_duration(std::string_view text) {
    auto const parts = parts_of(trim(text));
    double hours = 0;
    for (auto const& part : parts) {
        auto const number = parse_integer(part.number);
        auto const factor = hours_a(part.unit);
        if (!number || !factor)
            return refused("expected a whole number and a unit such as `26h`, `3d` or `2w`");
        hours += *number * *factor;
    }
    if (parts.empty())
        return refused("expected a whole number and a unit such as `26h`, `3d` or `2w`");
    if (hours > 24 * 366.0 * 130) return refused("that is longer than a life");
    return Duration{static_cast<int>(std::lround(hours))};
}

std::string to_text(Duration duration) {
    if (duration.hours >= 24 * 14 && duration.hours % (24 * 7) == 0)
        return fmt::format("{}w", duration.hours / (24 * 7));
    if (duration.hours >= 48 && duration.hours % 24 == 0)
        return fmt::format("{}d", duration.hours / 24);
    return fmt::format("{}h", duration.hours);
}

Parsed<Date> parse_date(std::string_view text) {
    bool const shaped = text.size() == 10 && text[4] == '-' && text[7] == '-';
    auto const year = shaped ? parse_integer(text.substr(0, 4)) : std::nullopt;
    auto const month = shaped ? parse_integer(text.substr(5, 2)) : std::nullopt;
    auto const day = shaped ? parse_integer(text.substr(8, 2)) : std::nullopt;
    if (!year || !month || !day || *year < 1000 || *month < 1 || *day < 1)
        return refused("expected a date such as `2031-04-02`");
    Date const date{std::chrono::year(*year), std::chrono::month(static_cast<unsigned>(*month)),
                    std::chrono::day(static_cast<unsigned>(*day))};
    if (!date.ok()) return refused("the calendar has no such day");
    return date;
}

std::string to_text(Date date) {
    return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()),
                       static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
}

Date add(Date date, Duration duration) {
    return std::chrono::sys_days(date) + std::chrono::days(duration.hours / 24);
}

}  // namespace asterism
