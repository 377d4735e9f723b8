// SPDX-License-Identifier: MIT
// The catalogue as a whole: how many findings, nothing left unsaid of any, and HPO ids that mean
// what we mean.
#include <algorithm>
#include <map>
#include <optional>
#include <regex>
#include <set>
#include <sstream>
#include <string>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "base/fold.h"
#include "hpo_graph.h"
#include "shipped_book.h"
#include "testing.h"
#include "yaml/read.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

constexpr std::size_t least_findings = 450;
constexpr std::size_t least_recognise = 10;  // characters of `recognise`
constexpr std::size_t word_start = 5;        // letters that tell words apart whatever their ending

HpoGraph const* hpo() {
    auto const file = data_file("hpo/hp-2024-08-13.json.gz");
    if (!file) return nullptr;
    static HpoGraph const graph(*file);
    return &graph;
}

/// The entries of every `findings` section as written, before the loader fills in defaults.
std::vector<yaml::Node> findings_as_written() {
    std::vector<yaml::Node> entries;
    for (auto const& file : files_below("ontology")) {
        if (!file->name().ends_with(".yaml")) continue;
        Diagnostics diagnostics;
        auto const tree = yaml::read_yaml(file, diagnostics);
        REQUIRE(tree);
        auto const* section = tree->find("findings");
        if (section) entries.insert(entries.end(), section->items.begin(), section->items.end());
    }
    return entries;
}

std::set<std::string> const fillers{"the", "and", "with", "abnormality", "abnormal"};

/// The first letters of every longer word, folded as names are (haemangioma and hemangioma agree).
std::set<std::string> word_starts(std::vector<std::string> const& texts) {
    std::set<std::string> starts;
    for (auto text : texts) {
        std::replace_if(
            text.begin(), text.end(), [](char c) { return c == '-' || c == '/' || c == ','; }, ' ');
        std::istringstream words(text);
        for (std::string word; words >> word;) {
            auto const folded = fold(word);
            bool const carries = folded.size() >= 3 && fillers.count(folded) == 0;
            if (carries) starts.insert(folded.substr(0, word_start));
        }
    }
    return starts;
}

std::vector<std::string> our_names(Finding const& finding) {
    std::vector<std::string> names{finding.id.text, finding.label};
    for (auto const* list : {&finding.synonyms, &finding.ambiguous, &finding.outdated}) {
        for (auto const& word : *list) names.push_back(word.text);
    }
    return names;
}

/// True when some id of the one finding stands below some id of the other.
bool below(HpoGraph const& graph, Finding const& child, Finding const& parent) {
    return std::any_of(child.hpo.begin(), child.hpo.end(), [&](Word const& low) {
        return std::any_of(parent.hpo.begin(), parent.hpo.end(),
                           [&](Word const& high) { return graph.is_below(low.text, high.text); });
    });
}

std::map<std::string, std::vector<FindingId>> findings_by_hpo() {
    std::map<std::string, std::vector<FindingId>> result;
    auto const& ontology = *shipped_book().ontology;
    for (FindingId id = 0; id < ontology.findings.size(); ++id) {
        for (auto const& term : ontology.at(id).hpo) result[term.text].push_back(id);
    }
    return result;
}

// Kinds of ours whose ids do not stand one below the other, and why they are kinds all the same.
std::map<std::string, std::string> const kinds_against_is_a{
    {"maternal-pre-eclampsia", "high blood pressure in pregnancy is part of its definition"},
};

}  // namespace

TEST_CASE("the catalogue is large enough and says everything of each finding") {
    auto const entries = findings_as_written();
    CHECK(entries.size() >= least_findings);
    CHECK(entries.size() == shipped_book().ontology->findings.size());
    std::size_t none = 0;
    for (auto const& entry : entries) {
        auto const* id = entry.find("finding");
        REQUIRE(id);
        std::string const name = id->text;
        CAPTURE(name);
        for (auto const* key : {"label", "step", "recognise", "hpo", "laterality"}) {
            CAPTURE(std::string(key));
            CHECK(entry.find(key) != nullptr);
        }
        auto const* recognise = entry.find("recognise");
        CHECK((recognise && recognise->text.size() >= least_recognise));
        none += entry.find("hpo")->text == "none" ? 1 : 0;
    }
    fmt::print("{} findings, {} of them without an HPO term\n", entries.size(), none);
}

TEST_CASE("laterality and HPO ids are well formed") {
    std::regex const hpo_id("HP:[0-9]{7}");
    for (auto const& entry : findings_as_written()) {
        std::string const name = entry.find("finding")->text;
        CAPTURE(name);
        auto const& laterality = entry.find("laterality")->text;
        CHECK((laterality == "paired" || laterality == "none"));
        auto const* hpo = entry.find("hpo");
        if (hpo->is_scalar()) CHECK((hpo->text == "none" || std::regex_match(hpo->text, hpo_id)));
        for (auto const& item : hpo->items) CHECK(std::regex_match(item.text, hpo_id));
    }
}

TEST_CASE("every HPO id of ours is a term in force") {
    auto const* graph = hpo();
    if (!graph) return;
    fmt::print("HPO: {}, {} terms\n", graph->version(), graph->size());
    CHECK(graph->version().find(shipped_book().ontology->header.hpo_version) != std::string::npos);
    for (auto const& [id, findings] : findings_by_hpo()) {
        CAPTURE(id);
        CHECK(graph->find(id) != nullptr);
        CHECK(graph->current(id) == id);
    }
}

TEST_CASE("our names and the HPO's for the same id share a word") {
    auto const* graph = hpo();
    if (!graph) return;
    for (auto const& finding : shipped_book().ontology->findings) {
        if (finding.hpo.empty()) continue;
        std::vector<std::string> theirs;
        for (auto const& id : finding.hpo) {
            auto const* term = graph->find(id.text);
            if (!term) continue;
            theirs.push_back(term->label);
            theirs.insert(theirs.end(), term->synonyms.begin(), term->synonyms.end());
        }
        auto const ours = word_starts(our_names(finding));
        auto const shared = word_starts(theirs);
        CAPTURE(finding.id.text);
        CAPTURE(fmt::format("{}", fmt::join(theirs, "; ")));
        CHECK(std::any_of(ours.begin(), ours.end(),
                          [&](std::string const& word) { return shared.count(word) > 0; }));
    }
}

TEST_CASE("a kind of ours is a kind in the HPO") {
    auto const* graph = hpo();
    if (!graph) return;
    auto const& ontology = *shipped_book().ontology;
    std::size_t compared = 0;
    for (auto const& finding : ontology.findings) {
        if (!finding.parent || finding.hpo.empty()) continue;
        auto const& parent = ontology.at(*finding.parent);
        if (parent.hpo.empty()) continue;
        ++compared;
        bool const excepted = kinds_against_is_a.count(finding.id.text) > 0;
        CAPTURE(finding.id.text);
        CAPTURE(parent.id.text);
        CHECK(below(*graph, finding, parent) != excepted);
    }
    fmt::print("{} kinds compared, {} against is-a on purpose\n", compared,
               kinds_against_is_a.size());
    CHECK(compared >= 100);
}

TEST_CASE("findings that share an HPO id have one neutral parent, or the import names the clash") {
    auto const& ontology = *shipped_book().ontology;
    std::size_t shared = 0;
    for (auto const& [id, findings] : findings_by_hpo()) {
        if (findings.size() < 2) continue;
        ++shared;
        CAPTURE(id);
        auto const parent = ontology.at(findings.front()).parent;
        bool common = parent.has_value() && !shipped_book().class_of(*parent);
        for (auto const finding : findings)
            common = common && ontology.at(finding).parent == parent;
        CHECK((common || ontology.finding_names.resolve(id).ambiguous()));
    }
    fmt::print("{} HPO ids are shared by several findings\n", shared);
    // Today none is: each id resolves to one finding.
    for (auto const& [id, findings] : findings_by_hpo()) {
        CAPTURE(id);
        CHECK(ontology.finding_names.resolve(id).unique() == (findings.size() == 1));
    }
}
