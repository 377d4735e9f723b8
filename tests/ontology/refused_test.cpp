// SPDX-License-Identifier: MIT
/// What is wrong in an ontology, each problem at its place.
#include "small.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

struct Row {
    std::string from;
    std::string to;
    std::string code;
    std::string message;
    std::string help;
};

bool holds(std::string const& text, std::string const& part) {
    return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("one change breaks a sound ontology in one way") {
    for (Row const& row : {
             Row{"step: palms, recognise", "step: palm, recognise", "unknown-step",
                 "unknown step `palm`", "did you mean `palms`"},
             Row{"parent: ear,", "parent: eer,", "unknown-finding", "unknown finding `eer`",
                 "`ear`"},
             Row{"region: ears, label: outer", "region: earz, label: outer", "unknown-region",
                 "unknown region `earz`", "did you mean `ears`"},
             Row{"[girth, span]", "[girt, span]", "unknown-measure", "unknown measure `girt`",
                 "did you mean `girth`"},
             Row{"[girth, span]", "[girth]", "wrong-form", "expected two measures", ""},
             Row{"{difference:", "{differenc:", "unknown-value", "unknown value `differenc`",
                 "`difference`"},
             Row{"units: [mm, cm]", "units: [mm, g]", "unit-mismatch",
                 "`g` of `girth` does not convert to mm", ""},
             Row{", instrument: ruler", "", "missing-key", "`instrument` or `computed`", ""},
             Row{"instrument: ruler", "instrument: rular", "unknown-value", "unknown value `rular`",
                 "did you mean `ruler`"},
             Row{"laterality: paired", "laterality: pared", "unknown-value",
                 "unknown value `pared`", "did you mean `paired`"},
             Row{"synonyms: [one", "synonym: [one", "unknown-key", "unknown key `synonym`",
                 "`synonyms`"},
             Row{"recognise: x., hpo: none}", "hpo: none}", "missing-key",
                 "the finding lacks the key `recognise`", ""},
             Row{", hpo-version: x", "", "missing-key", "lacks the key `hpo-version`", ""},
             Row{"essential: true", "essential: yes", "wrong-form", "`true` or `false`", ""},
             Row{"from: 200", "from: 0x10", "wrong-form", "a decimal number", ""},
         }) {
        CAPTURE(row.to);
        auto const loading = load({changed(whole(), row.from, row.to)});
        CHECK_FALSE(loading.ontology);
        auto const found = loading.coded(row.code);
        REQUIRE_FALSE(found.empty());
        auto const fits = std::any_of(found.begin(), found.end(), [&](Diagnostic const& d) {
            return holds(d.message, row.message) && holds(d.help, row.help);
        });
        CHECK(fits);
        CHECK(found.front().span.known());
    }
}

TEST_CASE("a name shared without a mark is an error at both places") {
    auto const text = changed(whole(), "synonyms: [one crease]", "synonyms: [turned ears]");
    auto const all = load({text}).coded("shared-name");
    REQUIRE(all.size() == 2);
    for (auto const& diagnostic : all) {
        REQUIRE(diagnostic.related.size() == 1);
        CHECK(diagnostic.related[0].span.known());
        CHECK(holds(diagnostic.help, "ambiguous"));
    }
    CHECK(all[0].related[0].span.begin == all[1].span.begin);
    CHECK(all[1].related[0].span.begin == all[0].span.begin);
}

TEST_CASE("a shared name marked in one finding only is still an error in the other") {
    auto const text = changed(whole(), "synonyms: [one crease]", "synonyms: [odd ears]");
    auto const all = load({text}).coded("shared-name");
    REQUIRE(all.size() == 1);
    CHECK(holds(all[0].message, "`single-crease`"));
}

TEST_CASE("names that fold alike are shared names") {
    auto const text = changed(whole(), "synonyms: [one crease]", "synonyms: [Low Set Ears]");
    CHECK(load({text}).coded("shared-name").size() == 2);
}

TEST_CASE("a finding may repeat its own name") {
    auto const text = changed(whole(), "synonyms: [one crease]", "synonyms: [single-crease]");
    CHECK(load({text}).ontology);
}

TEST_CASE("an id that stands twice is shown at both places") {
    auto const more = "steps:\n  - {step: tape, region: ears, label: z, how: z.}\n";
    auto const all = load({whole(), more}).coded("duplicate-id");
    REQUIRE(all.size() == 1);
    CHECK(all[0].message == "the exam step `tape` is defined twice");
    REQUIRE(all[0].related.size() == 1);
    // Ordering by region may change which of the two comes first.
    CHECK(all[0].span.source->name() != all[0].related[0].span.source->name());
}

TEST_CASE("ids of findings, regions, measures and sources stand once") {
    for (std::string const more :
         {"findings:\n  - {finding: ear, label: q, step: pinna, recognise: x., hpo: none}\n",
          "regions:\n  - {region: ears, label: q}\n",
          "measures:\n  - {measure: span, label: q, step: tape, unit: mm, plausible: {from: 0, "
          "to: 1}, instrument: tape}\n",
          "sources:\n  - {source: a, authors: a, title: a, journal: a, year: 2000, read: memory}\n"
          "  - {source: a, authors: b, title: a, journal: a, year: 2000, read: memory}\n"}) {
        CAPTURE(more);
        auto const loading = load({whole(), more});
        CHECK_FALSE(loading.ontology);
        CHECK(loading.coded("duplicate-id").size() == 1);
    }
}

TEST_CASE("a cycle of parents is told for each finding on it, and loading ends") {
    auto const text = changed(whole(), "label: any ear sign,", "label: any, parent: turned-ears,");
    auto const loading = load({text});
    CHECK_FALSE(loading.ontology);
    CHECK(loading.coded("is-a-cycle").size() == 3);
}

TEST_CASE("a finding that is its own parent is a cycle") {
    auto const text = changed(whole(), "label: any ear sign,", "label: any, parent: ear,");
    auto const all = load({text}).coded("is-a-cycle");
    REQUIRE(all.size() == 1);
    CHECK(all[0].message == "`ear` is its own ancestor");
}

TEST_CASE("an ontology has one header") {
    auto const none = load({body, findings});
    CHECK_FALSE(none.ontology);
    CHECK(none.coded("missing-header").size() == 1);
    auto const two = load({whole(), header});
    CHECK_FALSE(two.ontology);
    REQUIRE(two.coded("second-header").size() == 1);
    CHECK(two.coded("second-header")[0].span.source->name() == "f1.yaml");
}

TEST_CASE("no files at all give no ontology") {
    auto const loading = load({});
    CHECK_FALSE(loading.ontology);
    CHECK(loading.diagnostics.has_errors());
}

TEST_CASE("an unknown section names the nearest") {
    auto const all = load({whole(), "finding: []\n"}).coded("unknown-key");
    REQUIRE(all.size() == 1);
    CHECK(holds(all[0].help, "`findings`"));
}

TEST_CASE("a prevalence cites a known source and speaks of a known finding") {
    auto const text =
        "prevalences:\n  - {finding: eer, per-10000: 3, population: p, source: nobody}\n";
    auto const loading = load({whole(), text});
    CHECK(loading.coded("unknown-finding").size() == 1);
    CHECK(loading.coded("unknown-source").size() == 1);
}

TEST_CASE("a file that cannot be read does not hide the problems of the others") {
    auto const loading = load({changed(whole(), "parent: ear,", "parent: eer,"), "a: [\n"});
    CHECK(loading.coded("yaml-syntax").size() == 1);
    CHECK(loading.coded("unknown-finding").size() == 1);
}

TEST_CASE("a link inside the ontology is by id, not by label") {
    auto const loading = load({changed(whole(), "parent: low-ears", "parent: low-set ears")});
    CHECK_FALSE(loading.ontology);
    CHECK(loading.coded("unknown-finding").size() == 1);
}
