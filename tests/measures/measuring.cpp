// SPDX-License-Identifier: MIT
#include "measures/measuring.h"

#include <doctest/doctest.h>

#include "embedded/embedded.h"

namespace asterism::testing {

namespace {

std::string lines(Diagnostics const& diagnostics) {
    std::string text;
    for (auto const& one : diagnostics.sorted()) {
        text += one.span.place() + ": " + one.message;
        if (!one.help.empty()) text += " (" + one.help + ")";
        text += "\n";
    }
    return text;
}

std::vector<SourcePtr> with_ontology(std::string const& norms, std::vector<SourcePtr> tables) {
    tables.push_back(make_source("o.yaml", ontology_text(norms)));
    return tables;
}

std::vector<SourcePtr> embedded_below(std::string_view prefix) {
    std::vector<SourcePtr> sources;
    for (auto const& file : embedded::files()) {
        if (file.name.starts_with(prefix))
            sources.push_back(make_source(std::string(file.name), std::string(file.text)));
    }
    return sources;
}

CompiledRulebook load_shipped() {
    Diagnostics diagnostics;
    auto ontology = load_ontology(embedded_below("ontology/"), diagnostics);
    std::vector<SourcePtr> rules;
    for (auto const& source : embedded_below("rules/newborn/")) {
        if (source->name().ends_with(".yaml")) rules.push_back(source);
    }
    auto book = load_rulebook(rules, diagnostics);
    INFO(lines(diagnostics));
    REQUIRE(ontology);
    REQUIRE(book);
    auto compiled = compile(std::make_shared<Rulebook const>(*std::move(book)),
                            std::make_shared<Ontology const>(*std::move(ontology)), diagnostics);
    INFO(lines(diagnostics));
    REQUIRE(compiled);
    return *std::move(compiled);
}

Case read(Ontology const& ontology, std::string const& text, Diagnostics& diagnostics) {
    return read_case(make_source("case.yaml", text), ontology, diagnostics);
}

}  // namespace

std::string ontology_text(std::string const& norms) {
    return R"(
ontology: { id: small, version: 1.0.0, hpo-version: 2024-08-13 }
regions: [ { region: hand, label: hand } ]
steps: [ { step: palm, region: hand, label: palm, how: Open the hand. } ]
sources: [ { source: s-2000, authors: a, title: t, journal: j, year: 2000, read: memory } ]
measures:
  - { measure: width, label: width, unit: mm, units: [mm, cm], plausible: { from: 1, to: 90 }, step: palm, instrument: ruler, resolution: 1 }
  - { measure: girth, label: girth, unit: cm, units: [cm, mm], plausible: { from: 1, to: 60 }, step: palm, instrument: tape, resolution: 0.1 }
  - { measure: mass, label: mass, unit: g, units: [g, kg], plausible: { from: 100, to: 9000 }, step: palm, instrument: scale, resolution: 5 }
  - { measure: rate, label: rate, unit: /min, plausible: { from: 1, to: 300 }, step: palm, instrument: counter, resolution: 1 }
  - { measure: rate-two, label: second rate, unit: /min, plausible: { from: 1, to: 300 }, step: palm, instrument: counter, resolution: 1 }
  - { measure: share, label: share, unit: "%", plausible: { from: 0, to: 500 }, step: palm, computed: { percent: [width, girth] } }
  - { measure: quotient, label: quotient, unit: ratio, plausible: { from: 0, to: 50 }, step: palm, computed: { ratio: [width, girth] } }
  - { measure: gap, label: gap, unit: /min, plausible: { from: 0, to: 300 }, step: palm, computed: { absolute-difference: [rate, rate-two] } }
  - { measure: excess, label: excess, unit: /min, plausible: { from: -300, to: 300 }, step: palm, computed: { difference: [rate, rate-two] } }
  - { measure: middle, label: middle, unit: mm, plausible: { from: 0, to: 900 }, step: palm, computed: { mean: [width, girth] } }
)" + norms;
}

std::string norm_problems(std::string const& norms, std::vector<SourcePtr> const& tables) {
    Diagnostics diagnostics;
    auto const ontology = load_ontology(with_ontology(norms, tables), diagnostics);
    INFO(lines(diagnostics));
    REQUIRE(ontology);
    auto const standards = read_standards(*ontology, diagnostics);
    CHECK((standards == nullptr) == diagnostics.has_errors());
    return lines(diagnostics);
}

std::vector<MeasureReading> Measuring::readings(std::string const& case_text) const {
    Diagnostics diagnostics;
    auto const baby = read(*ontology, case_text, diagnostics);
    INFO(lines(diagnostics));
    REQUIRE_FALSE(diagnostics.has_errors());
    return read_margins(*ontology, *standards, baby);
}

MeasureReading Measuring::reading(std::string const& case_text, std::string const& measure) const {
    for (auto& reading : readings(case_text)) {
        if (ontology->measures[reading.measured.measure].id.text == measure)
            return std::move(reading);
    }
    FAIL("no reading of " << measure);
    return {};
}

bool Measuring::has(std::string const& case_text, std::string const& measure) const {
    for (auto const& reading : readings(case_text)) {
        if (ontology->measures[reading.measured.measure].id.text == measure) return true;
    }
    return false;
}

Measuring measuring(std::string const& norms) {
    Diagnostics diagnostics;
    auto ontology = load_ontology(with_ontology(norms, {}), diagnostics);
    INFO(lines(diagnostics));
    REQUIRE(ontology);
    Measuring result;
    result.ontology = std::make_shared<Ontology const>(*std::move(ontology));
    result.standards = read_standards(*result.ontology, diagnostics);
    INFO(lines(diagnostics));
    REQUIRE(result.standards);
    return result;
}

CompiledRulebook const& shipped_book() {
    static auto const book = load_shipped();
    return book;
}

Measuring const& shipped() {
    static Measuring const measuring{shipped_book().ontology, shipped_book().standards};
    return measuring;
}

std::string case_problems(std::string const& case_text) {
    Diagnostics diagnostics;
    read(*shipped_book().ontology, case_text, diagnostics);
    return lines(diagnostics);
}

}  // namespace asterism::testing
