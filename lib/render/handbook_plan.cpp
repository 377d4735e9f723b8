// SPDX-License-Identifier: MIT
#include <algorithm>
#include <set>

#include "render/handbook_parts.h"

namespace asterism {

namespace {

void named_in(Condition const& condition, std::set<FindingId>& found) {
    auto const leaf = condition.leaf();
    if (leaf.kind == Leaf::Kind::finding) found.insert(leaf.index);
    for (auto const& child : condition.children()) named_in(*child, found);
}

Urgency highest(CompiledRule const& rule) {
    auto urgency = Urgency::routine;
    for (auto const& s : rule.suggest) urgency = std::max(urgency, s.urgency);
    return urgency;
}

}  // namespace

HandbookPlan::HandbookPlan(CompiledRulebook const& given)
    : book(given), vocabulary(given.vocabulary()) {
    auto const& ontology = *book.ontology;
    for (FindingId id = 0; id < ontology.findings.size(); ++id) findings.push_back(id);
    // By region and step, as the examination goes; within a step as the ontology has them.
    std::stable_sort(findings.begin(), findings.end(), [&](FindingId a, FindingId b) {
        auto const place = [&](FindingId id) {
            return std::pair(ontology.step_of(id).region, ontology.at(id).step);
        };
        return place(a) < place(b);
    });
    for (auto const id : findings) {
        finding_numbers[id] = std::to_string(finding_numbers.size() + 1);
    }
    for (RuleId id = 0; id < book.rules.size(); ++id) rules.push_back(id);
    std::stable_sort(rules.begin(), rules.end(), [&](RuleId a, RuleId b) {
        auto const place = [&](RuleId id) {
            auto const& rule = book.rules[id];
            return std::pair(rule.suggest.front().service, -static_cast<int>(highest(rule)));
        };
        return place(a) < place(b);
    });
    for (auto const id : rules) {
        rule_numbers[id] = "R" + std::to_string(rule_numbers.size() + 1);
        std::set<FindingId> named;
        named_in(*book.rules[id].when->condition, named);
        for (auto const finding : named) rules_naming[finding].push_back(id);
    }
}

HandbookLink HandbookPlan::finding(FindingId id) const {
    auto const& finding = book.ontology->at(id);
    return {finding.label, "finding-" + finding.id.text};
}

HandbookLink HandbookPlan::rule(RuleId id) const {
    return {rule_numbers.at(id), "rule-" + book.syntax(book.rules[id]).id.text};
}

std::vector<HandbookLink> HandbookPlan::sources(std::vector<Word> const& list) const {
    std::vector<HandbookLink> links;
    for (auto const& word : list) links.push_back({word.text, "source-" + word.text});
    return links;
}

std::string capital(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') {
        text[0] = static_cast<char>(text[0] - 'a' + 'A');
    }
    return text;
}

}  // namespace asterism
