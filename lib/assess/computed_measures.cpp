// SPDX-License-Identifier: MIT
#include "assess/computed_measures.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "assess/measure_norms.h"
#include "base/number.h"
#include "base/quantity.h"
#include "norms/computed.h"

namespace asterism {

namespace {

norms::Computation computation(Formula formula) {
    switch (formula) {
        case Formula::z_difference: return norms::Computation::z_difference;
        case Formula::difference: return norms::Computation::difference;
        case Formula::absolute_difference: return norms::Computation::absolute_difference;
        case Formula::mean: return norms::Computation::mean;
        case Formula::percent: return norms::Computation::percent;
        case Formula::ratio: return norms::Computation::ratio;
    }
    return norms::Computation::difference;
}

MeasureReading const* reading_of(MeasureId id, std::vector<MeasureReading> const& readings) {
    auto const found = std::find_if(readings.begin(), readings.end(), [&](auto const& reading) {
        return reading.measured.measure == id;
    });
    return found == readings.end() ? nullptr : &*found;
}

NumberBand scaled(NumberBand band, double factor) {
    return {band.low * factor, band.high * factor};
}

norms::Reading const* preferred(MeasureReading const& reading) {
    for (auto const& answer : reading.answers) {
        if (answer && answer->preferred) return &*answer;
    }
    return nullptr;
}

/// A computed value without and with the margins of its parts.
struct Computed {
    NumberBand as_read;
    NumberBand with_margin;
};

/// The same reading as if it had been taken without error.
norms::Reading without_margin(norms::Reading reading) {
    for (auto& one : reading.evaluations) one.with_margin = norms::point(one.z);
    return reading;
}

std::optional<Computed> of_z(MeasureReading const& a, MeasureReading const& b) {
    auto const* of_a = preferred(a);
    auto const* of_b = preferred(b);
    if (!of_a || !of_b) return std::nullopt;
    auto const with_margin = norms::z_difference(*of_a, *of_b);
    auto const as_read = norms::z_difference(without_margin(*of_a), without_margin(*of_b));
    if (!with_margin || !as_read) return std::nullopt;
    return Computed{*as_read, *with_margin};
}

class Computer {
public:
    explicit Computer(Ontology const& ontology) : ontology_(ontology) {}

    std::optional<Computed> operator()(Measure const& measure, MeasureReading const& a,
                                       MeasureReading const& b) const {
        auto const formula = measure.computed->formula;
        if (formula == Formula::z_difference) return of_z(a, b);
        auto const& unit_of_a = ontology_.measures[a.measured.measure].unit;
        auto const& unit_of_b = ontology_.measures[b.measured.measure].unit;
        auto const factor = conversion(unit_of_b, unit_of_a);
        if (!factor) return std::nullopt;
        auto const kind = computation(formula);
        auto const as_read = norms::compute(kind, a.as_read, scaled(b.as_read, *factor));
        auto const with_margin = norms::compute(kind, a.value, scaled(b.value, *factor));
        if (!as_read || !with_margin) return std::nullopt;
        // Percent and ratio have no unit to convert from.
        double const to_own = conversion(unit_of_a, measure.unit).value_or(1);
        return Computed{scaled(*as_read, to_own), scaled(*with_margin, to_own)};
    }

private:
    Ontology const& ontology_;
};

std::string number_words(double value) {
    constexpr double hundredths = 100;
    return to_text(std::round(value * hundredths) / hundredths);
}

std::string words(NumberBand band, std::string const& unit) {
    auto const low = number_words(band.low);
    auto const high = number_words(band.high);
    auto const number = low == high ? low : fmt::format("{} to {}", low, high);
    return unit == "ratio" ? number : fmt::format("{} {}", number, unit);
}

}  // namespace

void add_computed(Ontology const& ontology, norms::Standards const& standards, Case const& baby,
                  std::vector<MeasureReading>& readings) {
    Computer const compute(ontology);
    for (MeasureId id = 0; id < ontology.measures.size(); ++id) {
        auto const& measure = ontology.measures[id];
        if (!measure.computed || reading_of(id, readings)) continue;
        auto const* a = reading_of(measure.computed->first, readings);
        auto const* b = reading_of(measure.computed->second, readings);
        auto const computed = a && b ? compute(measure, *a, *b) : std::nullopt;
        if (!computed) continue;
        MeasureReading reading;
        reading.computed = true;
        reading.as_read = computed->as_read;
        reading.value = computed->with_margin;
        reading.measured.measure = id;
        reading.measured.value = (reading.as_read.low + reading.as_read.high) / 2;
        reading.measured.as_written = {words(reading.as_read, measure.unit),
                                       a->measured.as_written.span};
        reading.measured.name_span = a->measured.name_span;
        add_norms(ontology, standards, baby, reading);
        readings.push_back(std::move(reading));
    }
}

}  // namespace asterism
