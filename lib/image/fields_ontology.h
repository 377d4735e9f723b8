// SPDX-License-Identifier: MIT
#pragma once

#include "image/fields_base.h"
#include "ontology/ontology.h"

namespace asterism {

ASTERISM_FIELDS(Region, id, label, history)
ASTERISM_FIELDS(ExamStep, id, region_name, label, how, essential, result, region)
ASTERISM_FIELDS(Finding, id, step_name, parent_name, label, recognise, synonyms, ambiguous,
                outdated, hpo, grades, icd10, laterality, sex, step, parent, children, history)
ASTERISM_FIELDS(PlausibleRange, from, to)
ASTERISM_FIELDS(Computation, formula, first_name, second_name, first, second)
ASTERISM_FIELDS(Measure, id, step_name, label, unit, units, plausible, synonyms, ambiguous,
                instrument, computed, resolution, soft, step)
ASTERISM_FIELDS(Citation, id, authors, title, journal, pages, doi, note, year, read)
ASTERISM_FIELDS(Prevalence, finding_name, per_10000, population, sources, note, finding)
ASTERISM_FIELDS(FindingFrame, step, parent, sex, history)
ASTERISM_FIELDS(OntologyHeader, id, version, hpo_version)

inline void save(image::Writer& archive, NameIndex const& names) { archive(names.stored()); }
inline void load(image::Reader& archive, NameIndex& names) {
    std::uint32_t size = 0;
    archive(size);
    names = NameIndex::from_stored(archive.view(size));
}

template <class Archive>
void serialize(Archive& archive, Ontology& value) {
    auto& [header, regions, steps, findings, frames, measures, citations, prevalences, norms,
           norm_sources, tables, digest, finding_names, step_names, region_names, measure_names,
           citation_names, norm_names, finding_by_id, measure_by_id, step_by_id] = value;
    static_cast<void>(norms);  // left out: the standards made of them are stored
    // Names do instead, as ids are among them.
    static_cast<void>(finding_by_id), static_cast<void>(measure_by_id);
    static_cast<void>(step_by_id);
    archive(header, regions, steps, findings, frames, measures, citations, prevalences,
            norm_sources, tables, digest, finding_names, step_names, region_names, measure_names,
            citation_names, norm_names);
}

}  // namespace asterism
