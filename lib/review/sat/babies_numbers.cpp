// SPDX-License-Identifier: MIT
// Ages, gestations and measures: numbers, of which the clauses see only which ranges they lie in.
#include <algorithm>
#include <cmath>

#include "review/sat/babies.h"

namespace asterism::sat {

namespace {

constexpr int first_week = 20;  // what a case may have, as `parse_gestation` reads it
constexpr int last_week = 45;

/// A number on each side of every bound, and the bounds: enough to tell all bands of the ranges
/// apart.
std::vector<double> points(std::vector<Range> const& ranges) {
    std::set<double> bounds;
    for (auto const& range : ranges) {
        if (std::isfinite(range.low)) bounds.insert(range.low);
        if (std::isfinite(range.high)) bounds.insert(range.high);
    }
    if (bounds.empty()) return {0};
    std::vector<double> result{*bounds.begin() - 1};
    for (auto it = bounds.begin(); it != bounds.end(); ++it) {
        result.push_back(*it);
        result.push_back(std::next(it) == bounds.end() ? *it + 1 : (*it + *std::next(it)) / 2);
    }
    return result;
}

template <class T, class Of>
std::vector<std::vector<Truth>> patterns(std::vector<T> const& values,
                                         std::vector<Range> const& ranges, Of const& of) {
    std::vector<std::vector<Truth>> result{std::vector<Truth>(ranges.size(), Truth::unknown)};
    for (auto const& value : values) {
        std::vector<Truth> pattern;
        for (auto const& range : ranges) pattern.push_back(of(range, value));
        if (std::find(result.begin(), result.end(), pattern) == result.end())
            result.push_back(std::move(pattern));
    }
    return result;
}

/// What a fact about a measure is when its test has this truth, or when there is no reading.
Truth as_fact(Fact::Kind kind, std::optional<Truth> test) {
    switch (kind) {
        case Fact::Kind::measure_by_eye: return test.value_or(Truth::no);
        case Fact::Kind::measure_red_flag: return truth(test.value_or(Truth::no) != Truth::no);
        default: return test.value_or(Truth::unknown);
    }
}

using Scale = std::tuple<MeasureId, Statistic, std::string>;

}  // namespace

std::vector<std::vector<Truth>> band_patterns(std::vector<Range> const& ranges) {
    auto const all = points(ranges);
    std::set<std::vector<Truth>> result;
    for (std::size_t low = 0; low < all.size(); ++low) {
        for (std::size_t high = low; high < all.size(); ++high) {
            std::vector<Truth> pattern;
            for (auto const& range : ranges) pattern.push_back(range.contains(all[low], all[high]));
            result.insert(std::move(pattern));
        }
    }
    return {result.begin(), result.end()};
}

std::vector<Duration> ages_to_try(std::vector<Range> const& hours) {
    std::set<int> result{0};
    for (auto const& range : hours) {
        for (auto const bound : {range.low, range.high}) {
            if (!std::isfinite(bound)) continue;
            for (int const delta : {-1, 0, 1})
                result.insert(std::max(0, static_cast<int>(bound) + delta));
        }
    }
    std::vector<Duration> ages;
    for (int const hour : result) ages.push_back({hour});
    return ages;
}

std::vector<Gestation> gestations_to_try() {
    std::vector<Gestation> result;
    for (int day = first_week * 7; day <= last_week * 7 + 6; ++day) result.push_back({day, day});
    for (int week = first_week; week <= last_week; ++week)
        result.push_back({week * 7, week * 7 + 6});
    return result;
}

void Babies::add_times() {
    Group age;
    Group gestation;
    std::vector<Range> hours;
    std::vector<Range> days;
    for (auto const& [key, truth] : facts_) {
        if (key.kind == Fact::Kind::age) age.keys.push_back(key), hours.push_back(key.range);
        if (key.kind == Fact::Kind::gestation)
            gestation.keys.push_back(key), days.push_back(key.range);
    }
    age.patterns =
        patterns(ages_to_try(hours), hours, [](Range const& range, Duration const& value) {
            return range.contains(value.hours, value.hours);
        });
    gestation.patterns =
        patterns(gestations_to_try(), days, [](Range const& range, Gestation const& value) {
            return range.contains(value.min_days, value.max_days);
        });
    if (!hours.empty()) add_group(std::move(age));
    if (!days.empty()) add_group(std::move(gestation));
}

void Babies::add_measures() {
    std::map<Scale, std::vector<FactKey>> scales;
    for (auto const& [key, truth] : facts_) {
        bool const measured = key.kind == Fact::Kind::measure ||
                              key.kind == Fact::Kind::measure_by_eye ||
                              key.kind == Fact::Kind::measure_red_flag;
        if (measured) scales[{key.test.measure, key.test.statistic, key.test.norm}].push_back(key);
    }
    for (auto& [scale, keys] : scales) {
        std::vector<Range> ranges;
        for (auto const& key : keys) ranges.push_back(key.test.range);
        Group group{keys, {{}}, {}};
        for (auto const& key : keys)
            group.patterns.front().push_back(as_fact(key.kind, std::nullopt));
        for (auto const& band : band_patterns(ranges)) {
            std::vector<Truth> pattern;
            for (std::size_t i = 0; i < keys.size(); ++i)
                pattern.push_back(as_fact(keys[i].kind, band[i]));
            // The first pattern, nothing read, stays apart from a reading that passes no cut-off.
            if (std::find(std::next(group.patterns.begin()), group.patterns.end(), pattern) ==
                group.patterns.end())
                group.patterns.push_back(pattern);
        }
        add_group(std::move(group));
    }
}

}  // namespace asterism::sat
