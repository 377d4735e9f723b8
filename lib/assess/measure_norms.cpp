// SPDX-License-Identifier: MIT
#include "assess/measure_norms.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/number.h"
#include "norms/normal.h"

namespace asterism {

namespace {

constexpr double rounding = 1e-9;  // far below any resolution, far above the error of a double

norms::Sex sex_of(Case const& baby) {
    if (baby.sex == Sex::female) return norms::Sex::female;
    return baby.sex == Sex::male ? norms::Sex::male : norms::Sex::undetermined;
}

std::vector<norms::Answer> at(norms::Standards const& standards, norms::Query query, double value,
                              double margin = 0) {
    query.value = value;
    query.margin = margin;
    return standards.readings(query);
}

std::optional<NumberBand> covered(std::optional<NumberBand> const& a,
                                  std::optional<NumberBand> const& b) {
    return a && b ? std::optional(norms::cover(*a, *b)) : std::nullopt;
}

/// Norms rise with the value, so what they say at both ends holds for everything between.
norms::Reading between(norms::Reading low, norms::Reading const& high) {
    low.z = covered(low.z, high.z);
    low.z_with_margin = covered(low.z_with_margin, high.z_with_margin);
    low.centile = covered(low.centile, high.centile);
    for (std::size_t i = 0; i < low.crossings.size(); ++i) {
        auto& beyond = low.crossings[i].beyond;
        if (beyond != high.crossings[i].beyond) beyond.reset();
    }
    return low;
}

/// The reading of the value itself with the ends of its margin joined on.
norms::Answer joined(norms::Answer const& as_read, norms::Answer const& low,
                     norms::Answer const& high) {
    if (!as_read) return as_read;
    if (!low) return low;
    if (!high) return high;
    auto const ends = between(*low, *high);
    auto result = *as_read;
    result.z_with_margin = ends.z_with_margin;
    result.crossings = ends.crossings;
    if (!result.z) result.centile = ends.centile;
    return result;
}

std::string relation_words(norms::Relation relation) {
    switch (relation) {
        case norms::Relation::below: return "below";
        case norms::Relation::above: return "above";
        case norms::Relation::at_most: return "at most";
        case norms::Relation::at_least: return "at least";
    }
    return {};
}

std::string crossing_words(norms::Crossing const& crossing) {
    auto const limit = fmt::format("{} {}{}{}", relation_words(crossing.cut_off.relation),
                                   to_text(crossing.cut_off.limit), crossing.unit == "%" ? "" : " ",
                                   crossing.unit);
    if (crossing.beyond) return fmt::format("{} ({})", crossing.cut_off.means, limit);
    return fmt::format("borderline, the limit lies within the reading error: {} ({})",
                       crossing.cut_off.means, limit);
}

void take_preferred(norms::Reading const& preferred, MeasureReading& reading) {
    reading.norm = preferred.norm;
    reading.z = preferred.z_with_margin;
    reading.centile = centile_with_margin(preferred);
    reading.z_as_read = preferred.z;
    reading.centile_as_read = preferred.centile;
    reading.note = note_of(preferred);
}

}  // namespace

norms::Query query_about(Case const& baby, Measure const& measure) {
    norms::Query query;
    query.measure = measure.id.text;
    query.unit = measure.unit;
    query.sex = sex_of(baby);
    if (baby.gestation)
        query.gestation = norms::DayRange{baby.gestation->min_days, baby.gestation->max_days};
    if (baby.age) query.age = std::chrono::hours(baby.age->hours);
    return query;
}

std::vector<norms::Answer> ask_norms(norms::Standards const& standards, norms::Query const& query,
                                     NumberBand as_read, NumberBand with_margin) {
    double const below = as_read.low - with_margin.low;
    double const above = with_margin.high - as_read.high;
    bool const even = norms::is_point(as_read) && std::abs(below - above) < rounding;
    if (even) return at(standards, query, as_read.low, std::max(above, 0.0));
    auto answers = at(standards, query, (as_read.low + as_read.high) / 2);
    auto const low = at(standards, query, with_margin.low);
    auto const high = at(standards, query, with_margin.high);
    for (std::size_t i = 0; i < answers.size(); ++i)
        answers[i] = joined(answers[i], low[i], high[i]);
    return answers;
}

std::optional<NumberBand> centile_with_margin(norms::Reading const& reading) {
    if (!reading.z_with_margin) return reading.centile;
    return NumberBand{norms::centile_of(reading.z_with_margin->low),
                      norms::centile_of(reading.z_with_margin->high)};
}

void add_norms(Ontology const& ontology, norms::Standards const& standards, Case const& baby,
               MeasureReading& reading) {
    auto const query = query_about(baby, ontology.measures[reading.measured.measure]);
    reading.answers = ask_norms(standards, query, reading.as_read, reading.value);
    for (auto const& answer : reading.answers) {
        if (answer && answer->preferred) return take_preferred(*answer, reading);
    }
    for (auto const& answer : reading.answers) {
        if (answer) continue;
        reading.note = "no norm: " + answer.error().reason;
        return;
    }
}

std::string note_of(norms::Reading const& reading) {
    std::vector<std::string> parts;
    for (auto const& crossing : reading.crossings) {
        if (crossing.beyond.value_or(true)) parts.push_back(crossing_words(crossing));
    }
    parts.insert(parts.end(), reading.notes.begin(), reading.notes.end());
    return fmt::format("{}", fmt::join(parts, "; "));
}

}  // namespace asterism
