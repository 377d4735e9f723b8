// SPDX-License-Identifier: MIT
/// A small ontology for cases, and a case as read with everything that was reported.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "cases/from_arguments.h"
#include "cases/read_case.h"
#include "testing.h"

namespace asterism::testing {

inline std::string const case_ontology = R"(
ontology: {id: tiny, version: 1.0.0, hpo-version: x}
regions:
  - {region: head, label: head}
  - {region: hands, label: hands and arms}
  - {region: past, label: history, history: true}
steps:
  - {step: tape, region: head, label: tape, how: Measure.}
  - {step: ears, region: head, label: outer ears, how: Look.}
  - {step: palms, region: hands, label: palms, how: Open them.}
  - {step: scan, region: hands, label: scan, how: Scan., result: true}
  - {step: asking, region: past, label: asking, how: Ask.}
findings:
  - {finding: ear, label: any ear sign, step: ears, recognise: x., hpo: none, laterality: paired}
  - {finding: low-ears, label: low-set ears, step: ears, parent: ear, recognise: x., hpo: "HP:0000369",
     laterality: paired, synonyms: [ears set low], ambiguous: [odd ears]}
  - {finding: turned-ears, label: turned ears, step: ears, parent: low-ears, recognise: x., hpo: none,
     laterality: paired, ambiguous: [odd ears]}
  - {finding: crease, label: single palmar crease, step: palms, recognise: x., hpo: none, laterality: paired}
  - {finding: digit, label: extra digit, step: palms, recognise: x., hpo: none, laterality: paired,
     grades: [skin tag, bony]}
  - {finding: ridge, label: ridged skull, step: tape, recognise: x., hpo: none}
  - {finding: hole, label: hole on scan, step: scan, recognise: x., hpo: none}
  - {finding: breech, label: breech birth, step: asking, recognise: x., hpo: none}
  - {finding: uncle, label: uncle with the same, step: asking, recognise: x., hpo: none}
measures:
  - {measure: girth, label: head girth, step: tape, unit: mm, units: [mm, cm, in], plausible: {from: 200, to: 450},
     instrument: tape, resolution: 1, synonyms: [HC]}
  - {measure: weight, label: birth weight, step: tape, unit: g, units: [g, kg], plausible: {from: 300, to: 7000},
     instrument: scale}
  - {measure: rate, label: heart rate, step: palms, unit: /min, plausible: {from: 0, to: 300}, instrument: counter}
)";

inline Ontology const& tiny() {
    static Ontology const ontology = [] {
        Diagnostics diagnostics;
        auto loaded = load_ontology({make_source("tiny.yaml", case_ontology)}, diagnostics);
        REQUIRE(loaded);
        return *loaded;
    }();
    return ontology;
}

struct CaseReading {
    Case baby;
    Diagnostics diagnostics;

    std::vector<Diagnostic> all() const { return diagnostics.sorted(); }
    /// `code line:column` of every diagnostic, in order.
    std::vector<std::string> reported() const {
        std::vector<std::string> result;
        for (auto const& diagnostic : all()) {
            auto const at = diagnostic.span.position();
            result.push_back(diagnostic.code + " " + std::to_string(at.line) + ":" +
                             std::to_string(at.column));
        }
        return result;
    }
};

using Texts = std::vector<std::string>;

inline CaseReading case_text(std::string text, std::string name = "c.yaml") {
    CaseReading reading;
    reading.baby =
        read_case(make_source(std::move(name), std::move(text)), tiny(), reading.diagnostics);
    return reading;
}

inline CaseReading case_of(CaseArguments const& arguments) {
    CaseReading reading;
    reading.baby = read_case(case_from_arguments(arguments), tiny(), reading.diagnostics);
    return reading;
}

/// Ids of the findings of some statements, in order.
inline Texts ids(std::vector<Statement> const& statements) {
    Texts result;
    for (auto const& statement : statements) result.push_back(tiny().at(statement.finding).id.text);
    return result;
}

/// Ids of the steps done, head to toe.
inline Texts done(Case const& baby) {
    Texts result;
    for (StepId step = 0; step < baby.step_done.size(); ++step) {
        if (baby.step_done[step]) result.push_back(tiny().steps[step].id.text);
    }
    return result;
}

}  // namespace asterism::testing
