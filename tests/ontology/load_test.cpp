// SPDX-License-Identifier: MIT
/// A sound ontology: its order, its links and its names.
#include "small.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

std::vector<std::string> ids(Ontology const& ontology, std::vector<FindingId> const& list) {
    std::vector<std::string> result;
    for (auto const id : list) result.push_back(ontology.at(id).id.text);
    return result;
}

Ontology sound() {
    auto loading = load({whole()});
    REQUIRE(loading.ontology);
    return *loading.ontology;
}

using Texts = std::vector<std::string>;

/// The ids that a name resolves to.
Texts meant(Ontology const& ontology, std::string const& name) {
    return ids(ontology, ontology.finding_names.resolve(name).targets);
}

}  // namespace

TEST_CASE("a sound ontology loads without a word") {
    auto const loading = load({whole()});
    REQUIRE(loading.ontology);
    CHECK(loading.all().empty());
    CHECK(loading.ontology->header.id.text == "tiny");
    CHECK(loading.ontology->header.version == "1.0.0");
    CHECK(loading.ontology->regions.size() == 4);
    CHECK(loading.ontology->steps.size() == 5);
    CHECK(loading.ontology->findings.size() == 6);
    CHECK(loading.ontology->measures.size() == 3);
}

TEST_CASE("steps and findings stand head to toe, in the order of regions") {
    auto const ontology = sound();
    Texts steps, findings_in_order;
    for (auto const& step : ontology.steps) steps.push_back(step.id.text);
    for (auto const& finding : ontology.findings) findings_in_order.push_back(finding.id.text);
    CHECK(steps == Texts{"tape", "pinna", "palms", "scan", "asking"});
    CHECK(findings_in_order ==
          Texts{"ear", "low-ears", "turned-ears", "single-crease", "heart-scan", "breech"});
}

TEST_CASE("the division into files and their order do not matter") {
    auto const one = sound();
    for (auto const& files :
         {Texts{header, body, findings, measures}, Texts{measures, findings, body, header}}) {
        auto const loading = load(files);
        REQUIRE(loading.ontology);
        auto const& other = *loading.ontology;
        REQUIRE(other.findings.size() == one.findings.size());
        for (FindingId id = 0; id < one.findings.size(); ++id) {
            CHECK(other.at(id).id.text == one.at(id).id.text);
            CHECK(other.step_of(id).id.text == one.step_of(id).id.text);
            CHECK(other.region_of(id).id.text == one.region_of(id).id.text);
        }
        CHECK(other.digest != one.digest);
    }
}

TEST_CASE("findings of one section may be spread over files") {
    auto const more =
        "findings:\n  - {finding: ridge, label: ridge, step: tape, recognise: x., "
        "hpo: none}\n";
    auto const loading = load({whole(), more});
    REQUIRE(loading.ontology);
    CHECK(loading.ontology->findings.size() == 7);
    CHECK(loading.ontology->findings.front().id.text == "ridge");
}

TEST_CASE("a finding is found by id, label, synonym, outdated name and HPO id") {
    auto const ontology = sound();
    for (std::string const name :
         {"single-crease", "single palmar crease", "SINGLE PALMAR CREASE", "singlecrease",
          "Single  palmar-crease", "one crease", "old crease", "HP:0000954", "hp:0000954"}) {
        CAPTURE(name);
        CHECK(meant(ontology, name) == Texts{"single-crease"});
    }
    CHECK(meant(ontology, "HP:0000369") == Texts{"low-ears"});
    CHECK(meant(ontology, "HP:0000368") == Texts{"low-ears"});
}

TEST_CASE("an ambiguous name stands for each of its findings") {
    auto const resolution = sound().finding_names.resolve("odd ears");
    CHECK(resolution.ambiguous());
    CHECK_FALSE(resolution.unique());
    CHECK(meant(sound(), "odd ears") == Texts{"low-ears", "turned-ears"});
}

TEST_CASE("an unknown name has near ones, never outdated ones") {
    auto const ontology = sound();
    auto const resolution = ontology.finding_names.resolve("low-sett ears");
    CHECK(resolution.targets.empty());
    REQUIRE_FALSE(resolution.nearest.empty());
    CHECK(resolution.nearest.front() == "low-set ears");
    for (auto const& name : ontology.finding_names.resolve("olt crease").nearest)
        CHECK(name != "old crease");
    CHECK(ontology.finding_names.resolve("zzzzzzzz").nearest.empty());
}

TEST_CASE("an ambiguous word asks which one is meant") {
    auto const ontology = sound();
    Diagnostics diagnostics;
    FindingId target = 99;
    auto const label = [&](FindingId id) { return ontology.at(id).label; };
    CHECK_FALSE(resolve_word(ontology.finding_names, {"odd ears", {}}, "finding", label, target,
                             diagnostics));
    CHECK(target == 99);
    auto const all = diagnostics.sorted();
    REQUIRE(all.size() == 1);
    CHECK(all[0].code == "ambiguous-name");
    CHECK(all[0].help == "write which: `low-set ears` or `turned ears`");
}

TEST_CASE("exact ids") {
    auto const ontology = sound();
    CHECK(ontology.finding("ear"));
    CHECK_FALSE(ontology.finding("Ear"));
    CHECK_FALSE(ontology.finding("low-set ears"));
    CHECK(ontology.measure("girth") == 0u);
    CHECK_FALSE(ontology.measure("HC"));
    CHECK(ontology.step("tape") == 0u);
    CHECK_FALSE(ontology.step("tap"));
}

TEST_CASE("steps and measures have names too") {
    auto const ontology = sound();
    CHECK(ontology.step_names.exact("outer ear") == std::vector<std::uint32_t>{1});
    CHECK(ontology.measure_names.exact("hc") == std::vector<std::uint32_t>{0});
    CHECK(ontology.measure_names.exact("Head-girth") == std::vector<std::uint32_t>{0});
    CHECK(ontology.region_names.exact("skull") == std::vector<std::uint32_t>{0});
}

TEST_CASE("descendants and ancestors, nearest first, without itself") {
    auto const ontology = sound();
    auto const id = [&](char const* name) { return *ontology.finding(name); };
    CHECK(ids(ontology, ontology.descendants(id("ear"))) == Texts{"low-ears", "turned-ears"});
    CHECK(ids(ontology, ontology.descendants(id("turned-ears"))).empty());
    CHECK(ids(ontology, ontology.ancestors(id("turned-ears"))) == Texts{"low-ears", "ear"});
    CHECK(ids(ontology, ontology.ancestors(id("ear"))).empty());
    CHECK(ids(ontology, ontology.at(id("ear")).children) == Texts{"low-ears"});
}

TEST_CASE("what is told or a result is marked, what is examined is not") {
    auto const ontology = sound();
    for (auto const* name : {"breech", "heart-scan"})
        CHECK(ontology.at(*ontology.finding(name)).history);
    for (auto const* name : {"ear", "low-ears", "single-crease"})
        CHECK_FALSE(ontology.at(*ontology.finding(name)).history);
    CHECK(ontology.steps[*ontology.step("scan")].result);
    CHECK(ontology.steps[*ontology.step("pinna")].essential);
    CHECK_FALSE(ontology.steps[*ontology.step("tape")].essential);
}

TEST_CASE("the fields of a finding") {
    auto const ontology = sound();
    auto const& crease = ontology.at(*ontology.finding("single-crease"));
    CHECK(crease.laterality == Laterality::paired);
    CHECK(crease.sex == Sex::not_given);
    CHECK(crease.hpo.size() == 1);
    CHECK(ontology.at(*ontology.finding("ear")).hpo.empty());
    CHECK(ontology.at(*ontology.finding("ear")).laterality == Laterality::none);
    CHECK(ontology.at(*ontology.finding("heart-scan")).sex == Sex::female);
    CHECK(ontology.at(*ontology.finding("turned-ears")).grades.size() == 2);
}

TEST_CASE("measures: accepted units, instrument and what they are computed from") {
    auto const ontology = sound();
    auto const& girth = ontology.measures[*ontology.measure("girth")];
    CHECK(girth.units == Texts{"mm", "cm"});
    CHECK(girth.instrument == Instrument::tape);
    CHECK_FALSE(girth.computed);
    CHECK(ontology.measures[*ontology.measure("span")].units == Texts{"mm"});
    auto const& gap = ontology.measures[*ontology.measure("gap")];
    REQUIRE(gap.computed);
    CHECK(gap.computed->formula == Formula::difference);
    CHECK(gap.computed->first == *ontology.measure("girth"));
    CHECK(gap.computed->second == *ontology.measure("span"));
    CHECK(gap.plausible.from == -900);
}

TEST_CASE("the digest counts every file, also tables") {
    auto const one = sound();
    CHECK(one.digest.size() == 64);
    CHECK(load({whole() + "# a comment\n"}).ontology->digest != one.digest);
    Diagnostics diagnostics;
    auto const with_table = load_ontology(
        {make_source("o.yaml", whole()), make_source("t.csv", "a,b\n1,2\n")}, diagnostics);
    REQUIRE(with_table);
    CHECK(with_table->tables.size() == 1);
    CHECK(with_table->digest != one.digest);
}

TEST_CASE("sexes have names") {
    CHECK(to_text(Sex::female) == "female");
    CHECK(to_text(Sex::male) == "male");
    CHECK(to_text(Sex::undetermined) == "undetermined");
    CHECK(to_text(Sex::not_given) == "not given");
}
