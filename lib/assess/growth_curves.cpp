// SPDX-License-Identifier: MIT
#include "assess/growth_curves.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "norms/units.h"

namespace asterism {

namespace {

struct Line {
    char const* label;
    double z;
};

/// z-scores of the centiles are the normal deviates; outside them three SD either way, dashed.
constexpr std::array lines{
    Line{"+3 SD", 3},       Line{"97", 1.8807936}, Line{"90", 1.2815516}, Line{"50", 0},
    Line{"10", -1.2815516}, Line{"3", -1.8807936}, Line{"-3 SD", -3},
};

using Failure = tl::unexpected<std::string>;

Failure no_chart(std::string why) { return tl::make_unexpected("no chart: " + std::move(why)); }

GrowthChart::Days days_of(norms::Clock clock) {
    switch (clock) {
        case norms::Clock::gestation_week: return GrowthChart::Days::completed_weeks;
        case norms::Clock::age_day: return GrowthChart::Days::age;
        case norms::Clock::post_menstrual_day: return GrowthChart::Days::post_menstrual;
        default: return GrowthChart::Days::gestation;
    }
}

tl::expected<norms::Reading, std::string> wanted_reading(MeasureReading const& reading,
                                                         std::string_view norm) {
    std::string why = "no norm applies";
    for (auto const& answer : reading.answers) {
        auto const& id = answer ? answer->norm : answer.error().norm;
        if (!norm.empty() && id != norm) continue;
        if (answer && (!norm.empty() || answer->preferred)) return *answer;
        if (!answer && !norm.empty()) why = answer.error().reason;
    }
    return no_chart(why);
}

/// Age runs to half a year in the tables; a newborn's point would be lost at the edge.
double last_shown(GrowthChart const& chart) {
    constexpr double least = 91;
    constexpr double beyond = 28;
    if (chart.days != GrowthChart::Days::age) return HUGE_VAL;
    return std::max(least, chart.day.high + beyond);
}

void add_lines(norms::Norm const& norm, std::string_view measure, norms::Sex sex,
               GrowthChart& chart) {
    auto const last = last_shown(chart);
    for (auto const& line : lines) {
        GrowthLine drawn{line.label, line.z, {}};
        for (auto const& point : norms::curve(norm, measure, sex, line.z)) {
            if (point.key <= last) drawn.points.emplace_back(point.key, point.value);
        }
        if (!drawn.points.empty()) chart.lines.push_back(std::move(drawn));
    }
}

NumberBand days_of(norms::Reading const& reading) {
    NumberBand band = norms::point(reading.evaluations.front().key);
    for (auto const& one : reading.evaluations) band = norms::cover(band, norms::point(one.key));
    return band;
}

std::string z_words(norms::Reading const& reading) {
    if (norms::is_point(*reading.z)) return fmt::format("z {:+.2f}", reading.z->low);
    return fmt::format("z {:+.2f} to {:+.2f}", reading.z->low, reading.z->high);
}

std::string babies(Case const& baby) { return baby.sex == Sex::female ? "girls" : "boys"; }

}  // namespace

tl::expected<GrowthChart, std::string> growth_chart(Ontology const& ontology,
                                                    norms::Standards const& standards,
                                                    Case const& baby, MeasureReading const& reading,
                                                    std::string_view norm) {
    auto const& measure = ontology.measures[reading.measured.measure];
    auto const wanted = wanted_reading(reading, norm);
    if (!wanted) return tl::make_unexpected(wanted.error());
    auto const& described = *standards.find(wanted->norm);
    if (!described.scale || described.clock() == norms::Clock::none)
        return no_chart(fmt::format("`{}` has no curves over days", wanted->norm));
    if (baby.sex != Sex::female && baby.sex != Sex::male)
        return no_chart("the curves are by sex; say which with --sex");
    GrowthChart chart;
    chart.unit = described.unit(measure.id.text);
    chart.days = days_of(described.clock());
    chart.day = days_of(*wanted);
    add_lines(described, measure.id.text,
              baby.sex == Sex::female ? norms::Sex::female : norms::Sex::male, chart);
    auto const convert = [&](double value) {
        return norms::convert(value, measure.unit, chart.unit).value_or(value);
    };
    chart.value = convert(reading.measured.value);
    chart.with_margin = {convert(reading.value.low), convert(reading.value.high)};
    chart.title =
        fmt::format("{}, {}: {}", measure.label, babies(baby), described.description.label);
    chart.subtitles = {"Population: " + described.description.population,
                       fmt::format("Sources: {}", fmt::join(described.description.sources, ", "))};
    chart.value_label = fmt::format("{} ({})", measure.label, chart.unit);
    chart.point_label = fmt::format("{}, {}", reading.measured.as_written.text, z_words(*wanted));
    return chart;
}

}  // namespace asterism
