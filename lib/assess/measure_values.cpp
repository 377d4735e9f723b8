// SPDX-License-Identifier: MIT
#include "assess/measure_values.h"

#include <algorithm>

namespace asterism {

namespace {

double half_resolution(Measure const& measure) {
    bool const read_by_eye = measure.instrument == Instrument::tape || measure.instrument == Instrument::ruler;
    return read_by_eye ? measure.resolution / 2 : 0;
}

std::optional<NumberBand> band_of(MeasureReading const& reading, Statistic statistic) {
    switch (statistic) {
        case Statistic::z: return reading.z;
        case Statistic::centile: return reading.centile;
        case Statistic::value: return reading.value;
    }
    return std::nullopt;
}

}  // namespace

std::vector<MeasureReading> read_margins(CompiledRulebook const& book, Case const& baby) {
    std::vector<MeasureReading> readings;
    for (auto const& measured : baby.measures) {
        double const margin = half_resolution(book.ontology->measures[measured.measure]);
        readings.push_back({measured, {measured.value - margin, measured.value + margin}, {}, {}, {}, {}});
    }
    return readings;
}

std::optional<Truth> value_of(MeasureTest const& test, std::vector<MeasureReading> const& readings) {
    auto const taken = std::find_if(readings.begin(), readings.end(),
                                    [&](MeasureReading const& r) { return r.measured.measure == test.measure; });
    if (taken == readings.end()) return std::nullopt;
    auto const band = band_of(*taken, test.statistic);
    if (!band) return std::nullopt;
    return test.range.contains(band->low, band->high);
}

}  // namespace asterism
