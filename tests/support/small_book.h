// SPDX-License-Identifier: MIT
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "assess/assess.h"
#include "cases/read_case.h"
#include "compile/compiled.h"

namespace asterism::testing {

/// A small ontology: eyes (two steps), hand, hip, history; a chain of three, a paired and a graded
/// finding.
inline std::string const small_ontology = R"(
ontology: { id: small, version: 1.0.0, hpo-version: 2024-08-13 }
regions:
  - { region: eyes, label: eyes }
  - { region: hand, label: hand }
  - { region: history, label: history, history: true }
steps:
  - { step: look, region: eyes, label: look, how: Look. }
  - { step: reflex, region: eyes, label: reflex, how: Shine., essential: true }
  - { step: palm, region: hand, label: palm, how: Open the hand. }
  - { step: echo, region: hand, label: echo, how: Scan., result: true }
  - { step: told, region: history, label: told, how: Ask. }
findings:
  - { finding: slant, label: slanting eyes, step: look, hpo: none, recognise: x., laterality: paired }
  - { finding: fold, label: inner fold, step: look, hpo: none, recognise: x., laterality: paired }
  - { finding: lens, label: any lens sign, step: look, hpo: none, recognise: x. }
  - { finding: cloudy, label: cloudy lens, step: reflex, parent: lens, hpo: none, recognise: x. }
  - { finding: opaque, label: opaque lens, step: reflex, parent: cloudy, hpo: none, recognise: x. }
  - { finding: crease, label: palm crease, step: palm, hpo: none, recognise: x., laterality: paired }
  - { finding: digit, label: extra digit, step: palm, hpo: none, recognise: x., laterality: paired, grades: [tag, bony] }
  - { finding: nubbin, label: nubbin, step: palm, hpo: none, recognise: x. }
  - { finding: testis, label: absent testis, step: palm, hpo: none, recognise: x., sex: male }
  - { finding: hole, label: hole in the heart, step: echo, hpo: none, recognise: x. }
  - { finding: breech, label: breech, step: told, hpo: none, recognise: x. }
measures:
  - { measure: width, label: width, unit: mm, units: [mm, cm], plausible: { from: 0, to: 50 }, step: palm, instrument: ruler, resolution: 1 }
  - { measure: rate, label: rate, unit: /min, plausible: { from: 0, to: 300 }, step: palm, instrument: counter }
sources:
  - { source: s, authors: a, title: t, journal: j, year: 2000, read: memory }
)";

/// Everything of a small book but its rules.
inline std::string const small_book_head = R"(
rulebook: { id: small, title: small, version: 1.0.0, effective: 2026-01-01, language: 1, ontology: small }
services:
  - { service: genetics, label: genetics }
  - { service: ophthalmology, label: ophthalmology }
  - { service: orthopaedics, label: orthopaedics }
keys:
  - { key: lids, kind: field, because: x. }
  - { key: hands, kind: field, because: x. }
  - { key: eye, kind: system, because: x., covers: [lids] }
  - { key: limb, kind: system, because: x. }
  - { key: genital, kind: system, because: x. }
  - { key: heart, kind: system, because: x. }
classes:
  - { finding: slant, class: minor-variant, key: lids, because: x., sources: [s] }
  - { finding: fold, class: minor-variant, key: lids, because: x., sources: [s] }
  - { finding: crease, class: minor-variant, key: hands, because: x., sources: [s] }
  - { finding: cloudy, class: major-anomaly, key: eye, because: x., sources: [s] }
  - { finding: opaque, class: red-flag, key: eye, because: x., sources: [s] }
  - { finding: digit, class: major-anomaly, key: limb, because: x., sources: [s] }
  - { finding: nubbin, class: normal-variant, because: x., sources: [s] }
  - { finding: testis, class: minor-variant, key: genital, because: x., sources: [s] }
  - { finding: hole, class: major-anomaly, key: heart, because: x., sources: [s] }
tallies:
  - { tally: minors, label: minor variants, count: minor-variant }
  - { tally: majors, label: major anomalies, count: [major-anomaly, red-flag] }
actions:
  - { action: scan, text: Scan the hips. }
)";

/// A rule in one line: `rule("id", "{ present: x }", "genetics", "urgent")`.
inline std::string rule(std::string const& id, std::string const& when, std::string const& service,
                        std::string const& urgency, std::string const& more = {}) {
    return "  - { rule: " + id + ", when: " + when + ", suggest: { service: " + service +
           ", urgency: " + urgency + " }, because: Because " + id +
           "., strength: study, sources: [s]" + more + " }\n";
}

struct Loaded {
    std::optional<CompiledRulebook> book;
    Diagnostics diagnostics;
};

inline Loaded load(std::string const& book_text,
                   std::string const& ontology_text = small_ontology) {
    Loaded loaded;
    auto ontology =
        load_ontology({make_source("ontology.yaml", ontology_text)}, loaded.diagnostics);
    auto book = load_rulebook({make_source("book.yaml", book_text)}, loaded.diagnostics);
    if (!ontology || !book) return loaded;
    loaded.book =
        compile(std::make_shared<Rulebook const>(std::move(*book)),
                std::make_shared<Ontology const>(std::move(*ontology)), loaded.diagnostics);
    return loaded;
}

/// A small book with these rules; the test stops when it does not load.
inline CompiledRulebook small_book(std::string const& rules) {
    auto loaded = load(small_book_head + "rules:\n" + rules);
    for (auto const& diagnostic : loaded.diagnostics.sorted())
        MESSAGE(diagnostic.span.place(), ": ", diagnostic.message);
    REQUIRE(loaded.book);
    return std::move(*loaded.book);
}

inline Case baby(CompiledRulebook const& book, std::string const& text) {
    Diagnostics diagnostics;
    auto result = read_case(make_source("case.yaml", text), *book.ontology, diagnostics);
    for (auto const& diagnostic : diagnostics.sorted())
        MESSAGE(diagnostic.span.place(), ": ", diagnostic.message);
    REQUIRE_FALSE(diagnostics.has_errors());
    return result;
}

inline Assessment judge(CompiledRulebook const& book, std::string const& text) {
    return assess(book, baby(book, text));
}

inline Referral const& referral(Assessment const& assessment, std::string const& service) {
    for (auto const& referral : assessment.referrals) {
        if (referral.service == service) return referral;
    }
    FAIL("no such service: ", service);
    return assessment.referrals.front();
}

inline std::string verdict(Assessment const& assessment, std::string const& service) {
    return std::string(to_text(referral(assessment, service).verdict));
}

inline TallyResult const& tally(Assessment const& assessment, std::string const& id) {
    for (auto const& tally : assessment.tallies) {
        if (tally.tally == id) return tally;
    }
    FAIL("no such tally: ", id);
    return assessment.tallies.front();
}

/// `low..high` of a tally.
inline std::string bounds(Assessment const& assessment, std::string const& id) {
    auto const& found = tally(assessment, id);
    return found.low + ".." + found.high;
}

/// Codes of all diagnostics, in order.
inline std::vector<std::string> codes(Diagnostics const& diagnostics) {
    std::vector<std::string> result;
    for (auto const& diagnostic : diagnostics.sorted()) result.push_back(diagnostic.code);
    return result;
}

inline bool has_code(Diagnostics const& diagnostics, std::string const& code) {
    auto const all = codes(diagnostics);
    return std::find(all.begin(), all.end(), code) != all.end();
}

}  // namespace asterism::testing
