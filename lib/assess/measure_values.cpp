// SPDX-License-Identifier: MIT
#include "assess/measure_values.h"

#include <algorithm>

#include "assess/computed_measures.h"
#include "assess/measure_norms.h"

namespace asterism {

namespace {

double half_resolution(Measure const& measure) {
    bool const read_by_eye =
        measure.instrument == Instrument::tape || measure.instrument == Instrument::ruler;
    return read_by_eye ? measure.resolution / 2 : 0;
}

std::optional<NumberBand> band_of(norms::Reading const& reading, Statistic statistic) {
    return statistic == Statistic::z ? reading.z_with_margin : centile_with_margin(reading);
}

std::optional<NumberBand> band_of(MeasureReading const& reading, MeasureTest const& test) {
    if (test.statistic == Statistic::value) return reading.value;
    if (test.norm.empty()) return test.statistic == Statistic::z ? reading.z : reading.centile;
    for (auto const& answer : reading.answers) {
        if (answer && answer->norm == test.norm) return band_of(*answer, test.statistic);
    }
    return std::nullopt;
}

}  // namespace

std::vector<MeasureReading> read_margins(Ontology const& ontology,
                                         norms::Standards const& standards, Case const& baby) {
    std::vector<MeasureReading> readings;
    for (auto const& measured : baby.measures) {
        double const margin = half_resolution(ontology.measures[measured.measure]);
        MeasureReading reading;
        reading.measured = measured;
        reading.as_read = norms::point(measured.value);
        reading.value = norms::widen(reading.as_read, margin);
        add_norms(ontology, standards, baby, reading);
        readings.push_back(std::move(reading));
    }
    add_computed(ontology, standards, baby, readings);
    return readings;
}

std::optional<Truth> value_of(MeasureTest const& test,
                              std::vector<MeasureReading> const& readings) {
    auto const taken = std::find_if(readings.begin(), readings.end(), [&](MeasureReading const& r) {
        return r.measured.measure == test.measure;
    });
    if (taken == readings.end()) return std::nullopt;
    auto const band = band_of(*taken, test);
    if (!band) return std::nullopt;
    return test.range.contains(band->low, band->high);
}

}  // namespace asterism
