// SPDX-License-Identifier: MIT
#pragma once

#include "image/fields_base.h"
#include "norms/standard.h"

namespace asterism::norms {

ASTERISM_FIELDS(DayRange, first, last)
ASTERISM_FIELDS(PrintedCentile, percent, number)
ASTERISM_FIELDS(CutOff, relation, limit, means)
ASTERISM_FIELDS(Window, gestation, age_from, age_to, beside)
ASTERISM_FIELDS(Caution, sex, gestation, text)
ASTERISM_FIELDS(NormDescription, norm, label, measures, kind, table, bundled, clock, who_tail, sex,
                unit, mean, mean_per_week, sd, centiles, cut_offs, windows, population, sources,
                evidence, note, cautions)

ASTERISM_FIELDS(Lms, l, m, s)
ASTERISM_FIELDS(SkewT, mu, sigma, nu, tau)
ASTERISM_FIELDS(VeryPreterm, measure, unit, logarithm_of_value, root_of_weeks, intercept, per_week,
                for_boys, variance, days)
ASTERISM_FIELDS(MeanSd, mean, per_week, sd)

template <class Archive, class Parameters>
void serialize(Archive& archive, ParameterRow<Parameters>& row) {
    auto& [measure, sex, key, parameters, line] = row;
    archive(measure, sex, key, parameters, line);
}

template <class Parameters>
void save(image::Writer& archive, ParameterTable<Parameters> const& table) {
    archive(table.rows(), table.units());
}
template <class Parameters>
void load(image::Reader& archive, ParameterTable<Parameters>& table) {
    typename ParameterTable<Parameters>::Rows rows;
    std::map<std::string, std::string> units;
    archive(rows, units);
    table = ParameterTable<Parameters>(std::move(rows), std::move(units));
}

ASTERISM_FIELDS(LmsScale, table, who_tail)
ASTERISM_FIELDS(SkewTScale, table)
ASTERISM_FIELDS(VeryPretermScale, equations)
ASTERISM_FIELDS(MeanSdScale, parameters)
ASTERISM_FIELDS(Norm, description, scale)

template <class Archive>
void serialize(Archive& archive, Standards::Entry& entry) {
    auto& [norm, measures] = entry;
    archive(norm, measures);
}

inline void save(image::Writer& archive, Standards const& standards) {
    archive(standards.entries(), standards.norms());
}
/// There is no empty `Standards` to load into: this makes one.
inline Standards load_standards(image::Reader& archive) {
    std::vector<Standards::Entry> entries;
    LazyList<Norm> norms;
    archive(entries, norms);
    if (entries.size() != norms.size()) throw image::BadImage("a norm without its entry");
    return Standards::of(std::move(norms), std::move(entries));
}

}  // namespace asterism::norms
