// SPDX-License-Identifier: MIT
#include "oracle/tables.h"

namespace asterism::oracle {

namespace {

void collect_below(FindingText const& finding, std::vector<FindingText const*>& below) {
    for (auto const* child : finding.children) {
        below.push_back(child);
        collect_below(*child, below);
    }
}

}  // namespace

Tables::Tables(Rulebook const& the_book, Ontology const& the_ontology)
    : book(the_book), ontology(the_ontology) {
    add_findings();
    add_book();
    add_members(major_classes());
    for (auto const& [id, tally] : tallies) {
        if (!tally.classes.empty()) add_members(tally.classes);
    }
    add_covering();
}

void Tables::add_findings() {
    std::map<std::string, std::size_t> steps;
    for (std::size_t i = 0; i < ontology.steps.size(); ++i) steps[ontology.steps[i].id.text] = i;
    std::map<std::string, bool> history;
    for (auto const& region : ontology.regions) history[region.id.text] = region.history;
    for (auto const& finding : ontology.findings) {
        FindingText text;
        text.finding = &finding;
        text.number = findings.size();
        text.step = steps.at(finding.step_name.text);
        auto const& step = ontology.steps[text.step];
        text.history = history.at(step.region_name.text);
        text.told = text.history || step.result;
        text.parent = finding.parent_name.text;
        findings.emplace(finding.id.text, std::move(text));
    }
    for (auto const& finding : ontology.findings) {
        if (!finding.parent_name.empty())
            findings.at(finding.parent_name.text).children.push_back(&findings.at(finding.id.text));
    }
    for (auto& [id, text] : findings) collect_below(text, text.below);
    for (auto const& measure : ontology.measures) measures[measure.id.text] = &measure;
}

void Tables::add_book() {
    for (auto const& item : book.classes) classes[item.finding.text] = &item;
    for (auto const& item : book.keys) keys[item.id.text] = &item;
    for (auto const& item : book.derived) findings.at(item.finding.text).derivation = &item;
    for (auto const& item : book.constellations) constellations[item.id.text] = &item;
    for (auto const& tally : book.tallies) {
        auto& text = tallies[tally.id.text];
        for (auto const value : tally.count) text.classes.insert(value);
        for (auto const& item : tally.score) text.items.push_back(&item);
    }
    for (auto const& constellation : book.constellations) add_constellation_tallies(constellation);
}

void Tables::add_constellation_tallies(ConstellationSyntax const& constellation) {
    auto& total = tallies[constellation.id.text];
    for (auto const& group : constellation.groups) {
        for (auto const& item : group.items) total.items.push_back(&item);
        if (group.name.empty()) continue;
        auto& part = tallies[constellation.id.text + "/" + group.name.text];
        for (auto const& item : group.items) part.items.push_back(&item);
    }
}

ClassSet Tables::major_classes() { return {FindingClass::major_anomaly, FindingClass::red_flag}; }

bool Tables::is_minor(std::string const& finding) const {
    return classes.at(finding)->value == FindingClass::minor_variant;
}

MembersByKey const& Tables::members(ClassSet counted, bool minor) const {
    return members_.at({counted, minor});
}

std::vector<std::vector<Member> const*> const& Tables::covering(std::string const& field) const {
    return covering_.at(field);
}

void Tables::add_covering() {
    for (auto const& [field, syntax] : keys) {
        auto& majors = covering_[field];
        for (auto const& [key, members] : this->members(major_classes(), false)) {
            if (covers(key, field)) majors.push_back(&members);
        }
    }
}

bool Tables::covers(std::string const& major, std::string const& field) const {
    if (major == field) return true;
    for (auto const& word : keys.at(major)->covers) {
        if (word.text == field) return true;
    }
    return false;
}

Member Tables::member(std::string const& id, ClassSet counted) const {
    Member member{&findings.at(id), is_minor(id), {}, {}};
    for (auto const* below : member.finding->below) {
        auto const classed = classes.find(below->name());
        if (classed == classes.end()) continue;
        bool const same_kind = is_minor(below->name()) == member.minor;
        bool const same_key = classed->second->key.text == classes.at(id)->key.text;
        if (!counted.contains(classed->second->value) || !same_key || !same_kind) {
            member.displaced_by.push_back(below);
        } else if (member.minor) {
            member.displaced_by_if_familial.push_back(below);
        }
    }
    return member;
}

void Tables::add_members(ClassSet counted) {
    auto& minors = members_[{counted, true}];
    auto& others = members_[{counted, false}];
    if (!minors.empty() || !others.empty()) return;
    for (auto const& finding : ontology.findings) {
        auto const classed = classes.find(finding.id.text);
        if (classed == classes.end() || classed->second->key.empty()) continue;
        if (!counted.contains(classed->second->value)) continue;
        auto& target = is_minor(finding.id.text) ? minors : others;
        target[classed->second->key.text].push_back(member(finding.id.text, counted));
    }
}

}  // namespace asterism::oracle
