// SPDX-License-Identifier: MIT
#include "assess/measure_report.h"

#include "assess/measure_norms.h"

namespace asterism {

namespace {

std::string evidence_words(norms::Evidence evidence) {
    switch (evidence) {
        case norms::Evidence::full_text: return "full text";
        case norms::Evidence::abstract: return "abstract";
        case norms::Evidence::secondary: return "secondary";
        case norms::Evidence::memory: return "memory";
    }
    return {};
}

NormResult norm_result(norms::NormDescription const& norm, norms::Reading const& reading) {
    NormResult result;
    result.norm = norm.norm;
    result.label = norm.label;
    result.population = norm.population;
    result.evidence = evidence_words(norm.evidence);
    result.sources = norm.sources;
    result.preferred = reading.preferred;
    result.z = reading.z;
    result.z_with_margin = reading.z_with_margin;
    result.centile = reading.centile;
    result.centile_with_margin = centile_with_margin(reading);
    result.note = note_of(reading);
    result.about = norm.note;
    return result;
}

void split(std::optional<NumberBand> const& band, std::optional<double>& low,
           std::optional<double>& high) {
    if (band) low = band->low, high = band->high;
}

}  // namespace

MeasureResult measure_result(Ontology const& ontology, MeasureReading const& reading) {
    auto const& measure = ontology.measures[reading.measured.measure];
    MeasureResult result;
    result.measure = measure.id.text;
    result.label = measure.label;
    result.as_written = reading.measured.as_written.text;
    result.unit = measure.unit;
    result.value = reading.measured.value;
    result.norm = reading.norm;
    split(reading.z_as_read, result.z_low, result.z_high);
    split(reading.z, result.z_with_margin_low, result.z_with_margin_high);
    split(reading.centile_as_read, result.centile_low, result.centile_high);
    split(reading.centile, result.centile_with_margin_low, result.centile_with_margin_high);
    result.note = reading.note;
    result.value_low = reading.value.low;
    result.value_high = reading.value.high;
    result.computed = reading.computed;
    return result;
}

std::vector<MeasureReport> measure_reports(Ontology const& ontology,
                                           norms::Standards const& standards, Case const& baby,
                                           std::string_view only_norm) {
    std::vector<MeasureReport> reports;
    for (auto const& reading : read_margins(ontology, standards, baby)) {
        MeasureReport report;
        report.measure = measure_result(ontology, reading);
        report.soft = ontology.measures[reading.measured.measure].soft;
        for (auto const& answer : reading.answers) {
            auto const& id = answer ? answer->norm : answer.error().norm;
            if (!only_norm.empty() && id != only_norm) continue;
            if (answer) {
                report.results.push_back(norm_result(standards.find(id)->description, *answer));
            } else {
                report.without.push_back({id, answer.error().reason});
            }
        }
        reports.push_back(std::move(report));
    }
    return reports;
}

}  // namespace asterism
