// SPDX-License-Identifier: MIT
/// Writes the shipped book as plain data for the peers of the benchmark: the circuit below its
/// rules as threshold gates, the facts that findings set, names, steps and services. Nothing in it
/// is asterism's evaluator; whoever reads it evaluates the gates in their own way.
#include <cstdio>

#include <nlohmann/json.hpp>

#include "oracle/subject.h"

namespace {

using namespace asterism;
using Json = nlohmann::json;

std::vector<bool> needed_by_rules(CompiledRulebook const& book) {
    std::vector<bool> needed(book.circuit.size(), false);
    for (auto const& rule : book.rules) needed[rule.when.literal.node] = true;
    for (auto node = book.circuit.size(); node-- > 0;) {
        auto const id = static_cast<NodeId>(node);
        if (!needed[node] || book.circuit.is_fact(id)) continue;
        for (auto const& input : book.circuit.inputs(id)) needed[input.literal.node] = true;
    }
    return needed;
}

Json gates(CompiledRulebook const& book, std::vector<bool> const& needed) {
    Json result = Json::array();
    for (NodeId node = 0; node < book.circuit.size(); ++node) {
        if (!needed[node] || book.circuit.is_fact(node)) continue;
        Json inputs = Json::array();
        for (auto const& [literal, weight] : book.circuit.inputs(node))
            inputs.push_back({literal.node, literal.negated, weight});
        result.push_back(
            {{"node", node}, {"threshold", book.circuit.threshold(node)}, {"inputs", inputs}});
    }
    return result;
}

Json range(Range const& r) {
    auto const bound = [](double value) { return std::isfinite(value) ? Json(value) : Json(); };
    return {{"low", bound(r.low)},
            {"high", bound(r.high)},
            {"low_open", r.low_open},
            {"high_open", r.high_open}};
}

Json facts(CompiledRulebook const& book, std::vector<bool> const& needed) {
    static constexpr char const* kinds[] = {
        "finding",        "history_assumed",  "left", "right",     "grade",  "familial", "measure",
        "measure_by_eye", "measure_red_flag", "age",  "gestation", "female", "male"};
    Json result = Json::array();
    for (auto const& fact : book.facts) {
        if (!needed[fact.node]) continue;
        Json one{{"kind", kinds[static_cast<int>(fact.kind)]}, {"node", fact.node}};
        one["finding"] = fact.index;
        if (fact.kind == Fact::Kind::grade) one["grade"] = fact.detail;
        if (fact.kind == Fact::Kind::age || fact.kind == Fact::Kind::gestation)
            one["range"] = range(book.ranges[fact.detail]);
        result.push_back(std::move(one));
    }
    return result;
}

Json findings(CompiledRulebook const& book) {
    Json result = Json::array();
    for (FindingId id = 0; id < book.present.size(); ++id) {
        auto const& finding = book.ontology->at(id);
        auto const value = book.class_of(id);
        Json one{{"id", finding.id.text},
                 {"label", finding.label},
                 {"class", value ? Json(to_text(*value)) : Json()},
                 {"paired", finding.laterality == Laterality::paired},
                 {"grades", finding.grades.size()},
                 {"sex", to_text(finding.sex)},
                 {"step", finding.step},
                 {"told", finding.history},
                 {"history", book.ontology->region_of(id).history},
                 {"descendants", book.ontology->descendants(id)},
                 {"measured", book.derived[id] && !book.derived[id]->tests.empty()}};
        result.push_back(std::move(one));
    }
    return result;
}

Json steps(Ontology const& ontology) {
    Json result = Json::array();
    for (auto const& step : ontology.steps)
        result.push_back({{"id", step.id.text},
                          {"exam", !ontology.regions[step.region].history && !step.result},
                          {"result", step.result}});
    return result;
}

Json rules(CompiledRulebook const& book) {
    Json result = Json::array();
    for (auto const& rule : book.rules) {
        Json suggest = Json::array();
        for (auto const& [service, urgency] : rule.suggest)
            suggest.push_back({service, static_cast<int>(urgency)});
        result.push_back({{"id", book.syntax(rule).id.text},
                          {"node", rule.when.literal.node},
                          {"negated", rule.when.literal.negated},
                          {"suggest", suggest}});
    }
    return result;
}

}  // namespace

int main() {
    auto const& book = oracle::shipped_book().compiled;
    auto const needed = needed_by_rules(book);
    Json document{{"nodes", book.circuit.size()},   {"gates", gates(book, needed)},
                  {"facts", facts(book, needed)},   {"findings", findings(book)},
                  {"steps", steps(*book.ontology)}, {"rules", rules(book)}};
    document["urgencies"] = {"routine", "urgent", "same-day", "emergency"};
    for (auto const& service : book.book->services) document["services"].push_back(service.id.text);
    auto const text = document.dump();
    return std::fwrite(text.data(), 1, text.size(), stdout) == text.size() ? 0 : 1;
}
