// SPDX-License-Identifier: MIT
#include "norms/reading.h"

#include <algorithm>
#include <cmath>

#include "norms/normal.h"
#include "norms/reading_notes.h"
#include "norms/units.h"
#include "norms/window.h"

namespace asterism::norms {
namespace {

using Failure = tl::unexpected<NoNorm>;

Failure fail(Norm const& norm, Why why, std::string reason) {
    return tl::make_unexpected(NoNorm{norm.description.norm, why, std::move(reason)});
}

/// The value with its margin, in the unit of the norm.
struct Value {
    double read = 0;
    Band with_margin;
};

tl::expected<Value, NoNorm> value_in_unit(Norm const& norm, Query const& query) {
    if (!std::isfinite(query.value) || !std::isfinite(query.margin) || query.margin < 0) {
        return fail(norm, Why::value, "the value is not a finite number");
    }
    auto const& unit = norm.unit(query.measure);
    auto const value = convert(query.value, query.unit, unit);
    auto const margin = convert(query.margin, query.unit, unit);
    if (!value || !margin)
        return fail(norm, Why::unit, "expected `" + unit + "`, found `" + query.unit + "`");
    return Value{*value, widen(point(*value), *margin)};
}

std::optional<NoNorm> wrong_sex(Norm const& norm, Query const& query) {
    auto const sex = norm.description.sex;
    if (!sex || *sex == query.sex) return std::nullopt;
    auto const babies = *sex == Sex::male ? std::string("for boys") : std::string("for girls");
    auto const found = query.sex == Sex::undetermined
                           ? "; the sex is undetermined or not given"
                           : "; this one is " + std::string(sex_text(query.sex));
    return NoNorm{norm.description.norm, Why::sex, babies + found};
}

DayRange shifted(DayRange days, int by) { return {days.first + by, days.last + by}; }

/// All keys under which the baby may have to be looked up.
tl::expected<DayRange, NoNorm> keys_for(Norm const& norm, Query const& query) {
    auto const age = query.age.value_or(std::chrono::hours{0});
    if (norm.clock() == Clock::none) return DayRange{0, 0};
    if (norm.clock() == Clock::age_day) return DayRange{nearest_day(age), nearest_day(age)};
    if (!query.gestation) return fail(norm, Why::gestation_unknown, "the gestation is not given");
    switch (norm.clock()) {
        case Clock::gestation_week:
            return DayRange{query.gestation->first / 7, query.gestation->last / 7};
        case Clock::post_menstrual_day: return shifted(*query.gestation, completed_days(age));
        default: return *query.gestation;
    }
}

std::vector<Sex> sexes_for(Norm const& norm, Query const& query) {
    if (!is_by_sex(*norm.scale)) return {Sex::undetermined};
    if (query.sex == Sex::undetermined) return {Sex::female, Sex::male};
    return {query.sex};
}

std::string key_text(Clock clock, int key) {
    if (clock == Clock::gestation_week) return std::to_string(key) + " completed weeks";
    if (clock == Clock::age_day) return "day " + std::to_string(key);
    return gestation_text(key);
}

Failure no_z(Norm const& norm, Place place, Why why) {
    if (why == Why::not_in_table)
        return fail(norm, why, "the table has no row for " + key_text(norm.clock(), place.key));
    if (why == Why::value) return fail(norm, why, "the value, with its margin, must be above 0");
    return fail(norm, why, "the value is so far from the median that no z-score exists");
}

tl::expected<Evaluation, NoNorm> evaluate(Norm const& norm, Place place, Value const& value) {
    auto const read = z_at(*norm.scale, place, value.read);
    auto const low = z_at(*norm.scale, place, value.with_margin.low);
    auto const high = z_at(*norm.scale, place, value.with_margin.high);
    for (auto const* z : {&read, &low, &high}) {
        if (!*z) return no_z(norm, place, z->error());
    }
    return Evaluation{place.sex, place.key, *read, {*low, *high}};
}

/// Fills the z-scores and centiles of a reading from all sexes and days that are possible.
std::optional<NoNorm> add_scores(Norm const& norm, Query const& query, Value const& value,
                                 Reading& reading) {
    auto const keys = keys_for(norm, query);
    if (!keys) return keys.error();
    for (auto const sex : sexes_for(norm, query)) {
        for (auto key = keys->first; key <= keys->last; ++key) {
            auto const found = evaluate(norm, {query.measure, sex, key}, value);
            if (!found) return found.error();
            reading.z = reading.z ? cover(*reading.z, point(found->z)) : point(found->z);
            reading.z_with_margin = reading.z_with_margin
                                        ? cover(*reading.z_with_margin, found->with_margin)
                                        : found->with_margin;
            reading.evaluations.push_back(*found);
        }
    }
    reading.centile = Band{centile_of(reading.z->low), centile_of(reading.z->high)};
    return std::nullopt;
}

void add_crossings(Norm const& norm, Query const& query, Value const& value, Reading& reading) {
    for (auto const& cut_off : norm.description.cut_offs) {
        reading.crossings.push_back(
            {cut_off, norm.unit(query.measure), is_beyond(value.with_margin, cut_off)});
    }
}

}  // namespace

Answer read_norm(Norm const& norm, Query const& query) {
    if (auto wrong = wrong_sex(norm, query)) return tl::make_unexpected(*std::move(wrong));
    auto const window = admitting_window(norm.description, query);
    if (!window) return tl::make_unexpected(window.error());
    if (norm.lacks_table()) {
        return fail(norm, Why::not_supplied,
                    "the table `" + norm.description.table + "` has to be supplied by the user");
    }
    auto const value = value_in_unit(norm, query);
    if (!value) return tl::make_unexpected(value.error());
    Reading reading;
    reading.norm = norm.description.norm;
    reading.preferred = !window->beside;
    if (norm.scale) {
        if (auto failure = add_scores(norm, query, *value, reading))
            return tl::make_unexpected(*std::move(failure));
    }
    if (norm.description.kind == Kind::centiles) {
        reading.centile = bracket(value->with_margin, norm.description.centiles);
    }
    add_crossings(norm, query, *value, reading);
    reading.notes = reading_notes(norm, *window, query, reading);
    return reading;
}

}  // namespace asterism::norms
