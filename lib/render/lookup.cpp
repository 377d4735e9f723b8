// SPDX-License-Identifier: MIT
#include "render/lookup.h"

#include <algorithm>
#include <set>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "render/layout.h"

namespace asterism {

namespace {

bool names(CompiledCondition const& condition, std::set<FindingId> const& wanted) {
    auto const leaf = condition.condition->leaf();
    if (leaf.kind == Leaf::Kind::finding && wanted.contains(leaf.index)) return true;
    return std::any_of(condition.children.begin(), condition.children.end(),
                       [&](CompiledCondition const& child) { return names(child, wanted); });
}

LookupEntry entry(CompiledRulebook const& book, FindingId id) {
    auto const& ontology = *book.ontology;
    LookupEntry result;
    result.finding = &ontology.at(id);
    result.region = ontology.region_of(id).label;
    result.step = ontology.step_of(id).label;
    result.how = ontology.step_of(id).how;
    if (result.finding->parent) result.parent = ontology.at(*result.finding->parent).label;
    for (auto const child : result.finding->children)
        result.children.push_back(ontology.at(child).label);
    if (auto const& classed = book.classes[id]) {
        auto const& syntax = book.book->classes[classed->syntax];
        result.finding_class = to_text(classed->value);
        result.because = syntax.because;
        if (classed->key) result.key = book.book->keys[*classed->key].id.text;
        for (auto const& source : syntax.sources) result.sources.push_back(source.text);
    }
    auto chain = ontology.ancestors(id);
    chain.push_back(id);
    std::set<FindingId> const wanted(chain.begin(), chain.end());
    for (auto const& rule : book.rules) {
        if (names(rule.when, wanted)) result.rules.push_back(book.syntax(rule).id.text);
    }
    return result;
}

std::vector<std::string> texts(std::vector<Word> const& words) {
    std::vector<std::string> result;
    for (auto const& word : words) result.push_back(word.text);
    return result;
}

void row(std::string& out, std::string_view name, std::string const& value) {
    if (!value.empty()) out += wrapped(value, fmt::format("  {:<12}", name), std::string(14, ' '));
}

std::string entry_text(LookupEntry const& e) {
    std::string out = fmt::format("{} [{}]\n", e.finding->label, e.finding->id.text);
    row(out, "recognise", e.finding->recognise);
    row(out, "where", fmt::format("{}: {}", e.region, e.step));
    row(out, "how", e.how);
    row(out, "class", e.finding_class.empty() ? "none" : e.finding_class);
    row(out, "because", e.because);
    row(out, "counts as", e.key);
    row(out, "also called", fmt::format("{}", fmt::join(texts(e.finding->synonyms), ", ")));
    row(out, "kind of", e.parent);
    row(out, "kinds", fmt::format("{}", fmt::join(e.children, ", ")));
    row(out, "HPO",
        e.finding->hpo.empty() ? "none"
                               : fmt::format("{}", fmt::join(texts(e.finding->hpo), ", ")));
    row(out, "rules", fmt::format("{}", fmt::join(e.rules, ", ")));
    row(out, "sources", fmt::format("{}", fmt::join(e.sources, ", ")));
    return out;
}

}  // namespace

std::vector<LookupEntry> look_up(CompiledRulebook const& book, std::string_view words) {
    std::vector<LookupEntry> entries;
    for (auto const id : book.ontology->finding_names.exact(words))
        entries.push_back(entry(book, id));
    return entries;
}

std::string lookup_text(std::vector<LookupEntry> const& entries) {
    std::string out = entries.size() > 1
                          ? fmt::format("{} findings carry this name\n\n", entries.size())
                          : std::string();
    for (auto const& e : entries) out += (&e == &entries.front() ? "" : "\n") + entry_text(e);
    return out;
}

nlohmann::ordered_json lookup_json(std::string_view words,
                                   std::vector<LookupEntry> const& entries) {
    nlohmann::ordered_json document{
        {"schema", lookup_schema}, {"words", words}, {"findings", nlohmann::ordered_json::array()}};
    for (auto const& e : entries) {
        document["findings"].push_back({{"finding", e.finding->id.text},
                                        {"label", e.finding->label},
                                        {"recognise", e.finding->recognise},
                                        {"region", e.region},
                                        {"step", e.step},
                                        {"how", e.how},
                                        {"class", e.finding_class},
                                        {"key", e.key},
                                        {"because", e.because},
                                        {"synonyms", texts(e.finding->synonyms)},
                                        {"parent", e.parent},
                                        {"children", e.children},
                                        {"hpo", texts(e.finding->hpo)},
                                        {"rules", e.rules},
                                        {"sources", e.sources}});
    }
    return document;
}

}  // namespace asterism
