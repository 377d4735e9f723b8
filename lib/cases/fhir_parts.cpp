// SPDX-License-Identifier: MIT
#include "cases/fhir_parts.h"

#include <algorithm>
#include <array>

namespace asterism {

namespace {

bool is_hpo(FhirConcept::Coding const& coding) {
    return coding.code.text.starts_with("HP:") || coding.system == hpo_system ||
           coding.system == "http://purl.obolibrary.org/obo/hp.owl" ||
           coding.system == "http://purl.obolibrary.org/obo/hp.fhir";
}

/// `HP_0000369`, `0000369` and `HP:0000369` are one.
std::string hpo_code(std::string_view code) {
    if (code.starts_with("HP:") || code.starts_with("HP_")) code.remove_prefix(3);
    return "HP:" + std::string(code);
}

void map_by_name(FhirConcept const& coded, Ontology const& ontology, MappedTerm& term) {
    std::vector<std::string> names{coded.text.text};
    for (auto const& coding : coded.codings) names.push_back(coding.display);
    for (auto const& name : names) {
        if (name.empty() || name.starts_with("HP:")) continue;
        auto const found = ontology.finding_names.exact(name);
        if (found.size() != 1) continue;
        term.how = Mapping::by_name;
        term.findings = {found.front()};
        return;
    }
}

}  // namespace

std::string FhirConcept::code(std::string_view system) const {
    for (auto const& coding : codings) {
        if (coding.system == system) return coding.code.text;
    }
    return {};
}

bool FhirConcept::has(std::string_view system, std::string_view code) const {
    return std::any_of(codings.begin(), codings.end(), [&](Coding const& coding) {
        return coding.system == system && coding.code.text == code;
    });
}

std::string FhirConcept::shown() const {
    if (!text.empty()) return text.text;
    for (auto const& coding : codings) {
        if (!coding.display.empty()) return coding.display;
    }
    return codings.empty() ? std::string() : codings.front().code.text;
}

FhirConcept read_concept(yaml::Node const& parent, std::string_view name,
                         JsonFields const& fields) {
    FhirConcept result;
    auto const* node = fields.object(parent, name);
    if (!node) return result;
    result.span = node->span;
    result.text = fields.text(*node, "text");
    for (auto const& coding : fields.list(*node, "coding")) {
        if (!fields.is_object(coding, "coding")) continue;
        result.codings.push_back({fields.text(coding, "system").text, fields.text(coding, "code"),
                                  fields.text(coding, "display").text});
    }
    return result;
}

MappedTerm map_concept(FhirConcept const& coded, TermState state, HpoMapper const& mapper,
                       Ontology const& ontology) {
    auto const hpo = std::find_if(coded.codings.begin(), coded.codings.end(), is_hpo);
    MappedTerm term;
    if (hpo != coded.codings.end()) {
        Word const id{hpo_code(hpo->code.text), hpo->code.span};
        term = state == TermState::excluded ? mapper.excluded(id, coded.shown())
                                            : mapper.observed(id, coded.shown());
    } else {
        bool const has_code = !coded.codings.empty() && !coded.codings.front().code.empty();
        term.id = has_code ? coded.codings.front().code : Word{coded.shown(), coded.span};
        term.label = has_code ? coded.shown() : std::string();
        map_by_name(coded, ontology, term);
    }
    term.state = state;
    return term;
}

Sides sides_of(FhirConcept const& site) {
    if (site.has(snomed_system, "51440002")) return Sides::both;
    Sides sides = Sides::not_said;
    if (site.has(snomed_system, "7771000")) sides = sides | Sides::left;
    if (site.has(snomed_system, "24028007")) sides = sides | Sides::right;
    return sides;
}

}  // namespace asterism
