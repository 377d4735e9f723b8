// SPDX-License-Identifier: MIT
/// Foreign records over a small ontology and a small HPO. Ids and is-a pairs of findings are real
/// (release 2024-08-13); the babies are invented.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "cases/imported.h"
#include "ontology/hpo.h"
#include "testing.h"

namespace asterism::testing {

inline std::string const record_ontology = R"(
ontology: {id: tiny, version: 1.0.0, hpo-version: 2024-08-13}
regions:
  - {region: head, label: head}
  - {region: past, label: history, history: true}
steps:
  - {step: look, region: head, label: look, how: Look.}
  - {step: tape, region: head, label: tape, how: Measure.}
  - {step: asking, region: past, label: asking, how: Ask.}
findings:
  - {finding: low-set-ears, label: low-set ears, step: look, recognise: x., hpo: "HP:0000369", laterality: paired}
  - {finding: hypertelorism, label: wide-spaced eyes, step: look, recognise: x., hpo: "HP:0000316"}
  - {finding: cleft, label: any cleft, step: look, recognise: x., hpo: none}
  - {finding: cleft-lip, label: cleft lip, step: look, parent: cleft, recognise: x., hpo: "HP:0000204"}
  - {finding: cleft-palate, label: cleft palate, step: look, parent: cleft, recognise: x., hpo: "HP:0000175"}
  - {finding: seizures, label: seizures, step: look, recognise: x., hpo: "HP:0001250", grades: [mild, marked]}
  - {finding: dimple, label: simple dimple, step: look, recognise: x., hpo: "HP:0000960"}
  - {finding: deep-dimple, label: deep dimple, step: look, recognise: x., hpo: "HP:0000960"}
  - {finding: consanguinity, label: parents are related, step: asking, recognise: x., hpo: none}
measures:
  - {measure: head-circumference, label: head circumference, step: tape, unit: cm, units: [cm, mm, in],
     plausible: {from: 20, to: 45}, instrument: tape, resolution: 0.1}
  - {measure: weight, label: weight, step: tape, unit: g, units: [g, kg], plausible: {from: 300, to: 7000},
     instrument: scale}
)";

inline std::string const record_hpo = R"(format-version: 1.2
data-version: hp/releases/2024-08-13
[Term]
id: HP:0000118
name: Phenotypic abnormality
[Term]
id: HP:0000369
name: Low-set ears
is_a: HP:0000118
[Term]
id: HP:0000316
name: Hypertelorism
alt_id: HP:0000578
is_a: HP:0000118
[Term]
id: HP:0000202
name: Orofacial cleft
is_a: HP:0000118
[Term]
id: HP:0000204
name: Cleft upper lip
is_a: HP:0000202
[Term]
id: HP:0000175
name: Cleft palate
is_a: HP:0000202
[Term]
id: HP:0001250
name: Seizure
is_a: HP:0000118
[Term]
id: HP:0002373
name: Febrile seizure
is_a: HP:0001250
[Term]
id: HP:0000960
name: Sacral dimple
is_a: HP:0000118
)";

inline Ontology const& small_ontology() {
    static Ontology const ontology = [] {
        Diagnostics diagnostics;
        auto loaded = load_ontology({make_source("small.yaml", record_ontology)}, diagnostics);
        for (auto const& d : diagnostics.sorted()) MESSAGE(d.span.place(), ": ", d.message);
        REQUIRE(loaded);
        return *loaded;
    }();
    return ontology;
}

inline Hpo const& small_hpo() {
    static Hpo const hpo = [] {
        Diagnostics diagnostics;
        auto read = read_hpo(make_source("hp.obo", record_hpo), diagnostics);
        REQUIRE(read);
        return *read;
    }();
    return hpo;
}

/// Cases of a record, with everything that was reported.
struct Records {
    std::vector<ImportedCase> cases;
    Diagnostics diagnostics;

    ImportedCase const& only() const {
        for (auto const& d : diagnostics.sorted()) {
            if (d.severity == Severity::error) FAIL(d.span.place(), ": ", d.message);
        }
        REQUIRE(cases.size() == 1);
        return cases.front();
    }
    /// `line:column code` of every error, in order.
    std::string errors() const {
        std::string text;
        for (auto const& d : diagnostics.sorted()) {
            if (d.severity != Severity::error) continue;
            auto const at = d.span.position();
            text += (text.empty() ? "" : " ") + std::to_string(at.line) + ":" +
                    std::to_string(at.column) + " " + d.code;
        }
        return text;
    }
    bool warned(std::string_view code) const {
        auto const all = diagnostics.sorted();
        return std::any_of(all.begin(), all.end(), [&](Diagnostic const& d) {
            return d.code == code && d.severity == Severity::warning;
        });
    }
};

using RecordReader = std::vector<ImportedCase> (*)(SourcePtr const&, ImportContext const&,
                                                   Diagnostics&);

inline Records read_records(RecordReader reader, std::string text, bool with_hpo = true,
                            std::string name = "record.json") {
    Records records;
    ImportContext const context{small_ontology(), with_hpo ? &small_hpo() : nullptr};
    records.cases =
        reader(make_source(std::move(name), std::move(text)), context, records.diagnostics);
    return records;
}

/// `low-set-ears right, cleft`: ids with sides and grades, in the order of the case.
inline std::string listed(std::vector<Statement> const& statements) {
    std::string text;
    for (auto const& s : statements) {
        auto const& finding = small_ontology().at(s.finding);
        text += (text.empty() ? "" : ", ") + finding.id.text;
        if (s.sides != Sides::not_said) text += " " + std::string(to_text(s.sides));
        if (s.grade) text += " " + finding.grades[*s.grade].text;
    }
    return text;
}

/// `exact`, `by-ancestor` ... of every term, in order.
inline std::string mapped(ImportedCase const& imported) {
    std::string text;
    for (auto const& term : imported.terms)
        text += (text.empty() ? "" : " ") + std::string(to_text(term.how));
    return text;
}

/// True when something with this in its name was left out.
inline bool left_out(ImportedCase const& imported, std::string_view what) {
    return std::any_of(imported.left_out.begin(), imported.left_out.end(),
                       [&](LeftOut const& l) { return l.what.find(what) != std::string::npos; });
}

}  // namespace asterism::testing
