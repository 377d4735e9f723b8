// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "cases/hpo_mapping.h"
#include "cases/json_fields.h"

namespace asterism {

inline constexpr std::string_view snomed_system = "http://snomed.info/sct";
inline constexpr std::string_view loinc_system = "http://loinc.org";
inline constexpr std::string_view hpo_system = "http://human-phenotype-ontology.org";

/// A CodeableConcept: its codings and its text.
struct FhirConcept {
    struct Coding {
        std::string system;
        Word code;
        std::string display;
    };
    std::vector<Coding> codings;
    Word text;
    Span span;

    /// The code in a system; empty when there is none.
    std::string code(std::string_view system) const;
    bool has(std::string_view system, std::string_view code) const;
    /// What a person reads: the text, else the first display, else the first code.
    std::string shown() const;
};

FhirConcept read_concept(yaml::Node const& parent, std::string_view name, JsonFields const& fields);

/// The finding that a concept names: by an HPO code, else by a text or display that is exactly a
/// name of ours.
MappedTerm map_concept(FhirConcept const& coded, TermState state, HpoMapper const& mapper,
                       Ontology const& ontology);

/// Left, right or both, out of the SNOMED CT codes of a body site.
Sides sides_of(FhirConcept const& site);

}  // namespace asterism
