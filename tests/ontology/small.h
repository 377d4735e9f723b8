// SPDX-License-Identifier: MIT
/// A small ontology to be bent by each test, and what loading it reports.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "ontology/ontology.h"
#include "testing.h"

namespace asterism::testing {

inline std::string const header = "ontology: {id: tiny, version: 1.0.0, hpo-version: x}\n";

/// Regions out of the order of the alphabet, steps and findings out of the order of regions.
inline std::string const body = R"(
regions:
  - {region: skull, label: skull}
  - {region: ears, label: ears}
  - {region: arms, label: arms}
  - {region: asked, label: history, history: true}
steps:
  - {step: palms, region: arms, label: palms of the hands, how: Open them.}
  - {step: scan, region: arms, label: scan, how: Scan., result: true}
  - {step: asking, region: asked, label: asking, how: Ask.}
  - {step: pinna, region: ears, label: outer ear, how: Look., essential: true}
  - {step: tape, region: skull, label: tape, how: Measure.}
)";

inline std::string const findings = R"(
findings:
  - {finding: single-crease, label: single palmar crease, step: palms, recognise: x., hpo: "HP:0000954",
     synonyms: [one crease], outdated: [old crease], laterality: paired}
  - {finding: breech, label: breech birth, step: asking, recognise: x., hpo: none}
  - {finding: ear, label: any ear sign, step: pinna, recognise: x., hpo: none}
  - {finding: low-ears, label: low-set ears, step: pinna, parent: ear, recognise: x.,
     hpo: ["HP:0000369", "HP:0000368"], ambiguous: [odd ears]}
  - {finding: turned-ears, label: turned ears, step: pinna, parent: low-ears, recognise: x., hpo: none,
     ambiguous: [odd ears], grades: [mild, marked]}
  - {finding: heart-scan, label: hole seen on scan, step: scan, recognise: x., hpo: none, sex: female}
)";

inline std::string const measures = R"(
measures:
  - {measure: girth, label: head girth, step: tape, unit: mm, units: [mm, cm], plausible: {from: 200, to: 450},
     instrument: tape, resolution: 1, synonyms: [HC]}
  - {measure: span, label: arm span, step: palms, unit: mm, plausible: {from: 100, to: 900}, instrument: ruler}
  - {measure: gap, label: gap, step: tape, unit: mm, plausible: {from: -900, to: 900},
     computed: {difference: [girth, span]}}
)";

inline std::string whole() { return header + body + findings + measures; }

/// An ontology as loaded from texts named f0.yaml, f1.yaml and so on.
struct Loading {
    std::optional<Ontology> ontology;
    Diagnostics diagnostics;

    std::vector<Diagnostic> all() const { return diagnostics.sorted(); }
    std::vector<Diagnostic> coded(std::string const& code) const {
        auto result = all();
        std::erase_if(result, [&](Diagnostic const& d) { return d.code != code; });
        return result;
    }
};

inline Loading load(std::vector<std::string> const& texts) {
    std::vector<SourcePtr> files;
    for (auto const& text : texts)
        files.push_back(make_source("f" + std::to_string(files.size()) + ".yaml", text));
    Loading loading;
    loading.ontology = load_ontology(files, loading.diagnostics);
    return loading;
}

/// The text with the first `from` replaced; fails when there is none.
inline std::string changed(std::string text, std::string const& from, std::string const& to) {
    auto const at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

}  // namespace asterism::testing
