// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include "render/assessment_words.h"
#include "render/handbook_parts.h"

namespace asterism {

namespace {

std::vector<HandbookLink> plain(std::vector<Word> const& words) {
    std::vector<HandbookLink> links;
    for (auto const& word : words) links.push_back({word.text, ""});
    return links;
}

class FindingsChapter {
public:
    explicit FindingsChapter(HandbookPlan const& plan)
        : plan_(plan), ontology_(*plan.book.ontology) {}

    HandbookSection write() const {
        HandbookSection chapter{"findings", "Findings, head to toe", {}, {}, {}, false};
        chapter.paragraphs = {
            "Each region, each thing the examiner does there, and what it can show. The number "
            "before a finding is the one that the index gives."};
        for (RegionId id = 0; id < ontology_.regions.size(); ++id) {
            auto const& region = ontology_.regions[id];
            chapter.sections.push_back(
                {"region-" + region.id.text, capital(region.label), {}, {}, steps(id), false});
        }
        return chapter;
    }

private:
    std::vector<HandbookSection> steps(RegionId region) const {
        std::vector<HandbookSection> result;
        for (StepId id = 0; id < ontology_.steps.size(); ++id) {
            if (ontology_.steps[id].region == region) result.push_back(step(id));
        }
        return result;
    }

    HandbookSection step(StepId id) const {
        auto const& step = ontology_.steps[id];
        HandbookSection section{
            "step-" + step.id.text, capital(step.label), {step.how}, {}, {}, false};
        if (step.essential) {
            section.paragraphs.push_back("Essential: left out, it could hide something dangerous.");
        }
        if (step.result) section.paragraphs.push_back("The result of a test.");
        for (auto const finding : plan_.findings) {
            if (ontology_.at(finding).step == id) section.entries.push_back(entry(finding));
        }
        return section;
    }

    HandbookEntry entry(FindingId id) const {
        auto const& finding = ontology_.at(id);
        HandbookEntry entry;
        entry.anchor = plan_.finding(id).anchor;
        entry.number = plan_.finding_numbers.at(id);
        entry.title = capital(finding.label);
        entry.paragraphs.push_back(finding.recognise);
        add_class(id, entry);
        add(entry, "Also called", plain(finding.synonyms));
        if (finding.parent) add(entry, "A kind of", {plan_.finding(*finding.parent)});
        add(entry, "Grades", plain(finding.grades));
        if (finding.sex != Sex::not_given) {
            add(entry, "In", {{finding.sex == Sex::male ? "boys only" : "girls only", ""}});
        }
        add(entry, "HPO", plain(finding.hpo));
        add_rules(id, entry);
        add_sources(id, entry);
        return entry;
    }

    void add_class(FindingId id, HandbookEntry& entry) const {
        auto const& compiled = plan_.book.classes[id];
        if (!compiled) {
            entry.badge_words = "not classed";
            return;
        }
        auto const& syntax = plan_.book.book->classes[compiled->syntax];
        entry.badge = to_text(compiled->value);
        entry.badge_words = class_words(compiled->value);
        entry.paragraphs.push_back(syntax.because);
        if (!syntax.key.empty()) {
            add(entry, "Counts as", {{syntax.key.text, "key-" + syntax.key.text}});
        }
    }

    void add_sources(FindingId id, HandbookEntry& entry) const {
        auto const& compiled = plan_.book.classes[id];
        if (!compiled) return;
        add(entry, "Sources", plan_.sources(plan_.book.book->classes[compiled->syntax].sources));
    }

    void add_rules(FindingId id, HandbookEntry& entry) const {
        auto const found = plan_.rules_naming.find(id);
        if (found == plan_.rules_naming.end()) return;
        std::vector<HandbookLink> links;
        for (auto const rule : found->second) links.push_back(plan_.rule(rule));
        add(entry, "Rules", std::move(links));
    }

    static void add(HandbookEntry& entry, std::string name, std::vector<HandbookLink> links) {
        if (!links.empty()) entry.rows.emplace_back(std::move(name), std::move(links));
    }

    HandbookPlan const& plan_;
    Ontology const& ontology_;
};

}  // namespace

HandbookSection findings_chapter(HandbookPlan const& plan) { return FindingsChapter(plan).write(); }

HandbookSection derived_chapter(HandbookPlan const& plan) {
    HandbookSection chapter{"derived", "What measures and other findings conclude", {}, {}, {},
                            false};
    chapter.paragraphs = {
        "Where a measure was taken it decides; without it the finding is what the eye says."};
    for (auto const id : plan.findings) {
        auto const& compiled = plan.book.derived[id];
        if (!compiled) continue;
        auto const& syntax = plan.book.book->derived[compiled->syntax];
        HandbookEntry entry;
        entry.anchor = "derived-" + syntax.finding.text;
        entry.title = capital(plan.finding(id).text);
        auto clause = clause_of(*compiled->when->condition, plan.vocabulary);
        clause.text = "If " + clause.text;
        entry.clauses.push_back(std::move(clause));
        entry.paragraphs.push_back(syntax.because);
        entry.rows = {{"Finding", {{plan.finding_numbers.at(id), plan.finding(id).anchor}}},
                      {"Sources", plan.sources(syntax.sources)}};
        chapter.entries.push_back(std::move(entry));
    }
    return chapter;
}

}  // namespace asterism
