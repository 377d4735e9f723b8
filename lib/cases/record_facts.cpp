// SPDX-License-Identifier: MIT
#include "cases/record_facts.h"

#include <algorithm>
#include <charconv>
#include <cmath>

#include <fmt/format.h>

#include "cases/loinc.h"
#include "cases/measured.h"

namespace asterism {

namespace {

constexpr double hours_a_day = 24;
constexpr double days_a_year = 365.25;
constexpr int days_a_week = 7;
constexpr int longest_hours = 24 * 366 * 150;  // no person is older

std::optional<double> hours_in(char unit, bool time) {
    switch (unit) {
        case 'Y': return days_a_year * hours_a_day;
        case 'M': return time ? 1.0 / 60 : days_a_year / 12 * hours_a_day;
        case 'W': return days_a_week * hours_a_day;
        case 'D': return hours_a_day;
        case 'H': return 1;
        case 'S': return 1.0 / 3600;
        default: return std::nullopt;
    }
}

std::optional<int> whole_number(std::string_view text) {
    // Protobuf writes whole doubles with a fraction: `266.0`.
    while (text.find('.') != std::string_view::npos && (text.ends_with('0') || text.ends_with('.')))
        text.remove_suffix(1);
    int value = 0;
    auto const* end = text.data() + text.size();
    auto const read = std::from_chars(text.data(), end, value);
    if (read.ec != std::errc{} || read.ptr != end || text.empty()) return std::nullopt;
    return value;
}

}  // namespace

Parsed<Duration> parse_iso_duration(std::string_view text) {
    auto const refuse = [] {
        return tl::make_unexpected(
            std::string("expected an ISO 8601 duration such as `P3D` or `PT26H`"));
    };
    if (text.size() < 3 || text.front() != 'P') return refuse();
    double hours = 0;
    bool time = false;
    std::size_t begin = 1;
    for (std::size_t at = 1; at < text.size(); ++at) {
        auto const c = text[at];
        if (c >= '0' && c <= '9') continue;
        if (c == 'T' && begin == at && !time) {
            time = true;
        } else {
            auto const number = whole_number(text.substr(begin, at - begin));
            auto const unit = hours_in(c, time);
            bool const in_place = c == 'M' || (c == 'H' || c == 'S') == time;
            if (!number || !unit || !in_place) return refuse();
            hours += *number * *unit;
        }
        begin = at + 1;
    }
    if (begin != text.size() || text.back() == 'T' || hours > longest_hours) return refuse();
    return Duration{static_cast<int>(std::lround(hours))};
}

std::string to_iso_duration(Duration duration) {
    constexpr int day = 24;
    if (duration.hours % day != 0) return fmt::format("PT{}H", duration.hours);
    return fmt::format("P{}D", duration.hours / day);
}

Parsed<Date> date_of_timestamp(std::string_view text) {
    constexpr std::size_t date_size = 10;
    bool const more = text.size() > date_size;
    if (more && text[date_size] != 'T')
        return tl::make_unexpected(std::string("expected a time such as `2031-04-02T00:00:00Z`"));
    return parse_date(text.substr(0, date_size));
}

Parsed<Gestation> gestation_of_quantity(std::string_view number, std::string_view unit) {
    constexpr std::string_view prefix = "UCUM:";
    if (unit.starts_with(prefix)) unit.remove_prefix(prefix.size());
    auto const whole = whole_number(number);
    if (!whole) return tl::make_unexpected(std::string("expected whole days or whole weeks"));
    if (unit == "d" || unit == "days" || unit == "day")
        return parse_gestation(fmt::format("{}w{}d", *whole / days_a_week, *whole % days_a_week));
    if (unit == "wk" || unit == "weeks" || unit == "week")
        return parse_gestation(fmt::format("{}w", *whole));
    return tl::make_unexpected(fmt::format("unknown unit `{}`, expected `d` or `wk`", unit));
}

void add_measure(std::string_view measure_id, Word const& number, std::string const& unit,
                 Ontology const& ontology, ImportedCase& result, Diagnostics& diagnostics) {
    if (!ontology.measure(measure_id)) {
        result.left_out.push_back({fmt::format("{} {} {}", measure_id, number.text, unit),
                                   "the ontology has no such measure", number.span});
        return;
    }
    Word const value{fmt::format("{} {}", number.text, unit), number.span};
    auto const measured =
        read_measure({std::string(measure_id), number.span}, value, ontology, diagnostics);
    if (!measured) return;
    auto& measures = result.baby.measures;
    bool const known = std::any_of(measures.begin(), measures.end(), [&](MeasuredValue const& m) {
        return m.measure == measured->measure;
    });
    if (!known) return measures.push_back(*measured);
    result.left_out.push_back({fmt::format("{} {}", measure_id, value.text),
                               "another value of the same measure is used", number.span});
}

}  // namespace asterism
