// SPDX-License-Identifier: MIT
#include "render/case_parts.h"

#include <fmt/format.h>

#include "cases/examined.h"

namespace asterism {

namespace {

using Json = nlohmann::ordered_json;

yaml::Node examined_node(ExaminedWords const& words) {
    std::vector<yaml::Node> items, excepted;
    for (auto const& word : words.done) items.push_back(yaml::scalar({word, {}}));
    for (auto const& word : words.except) excepted.push_back(yaml::scalar({word, {}}));
    if (!excepted.empty())
        items.push_back(yaml::map({}, {{{"except", {}}, yaml::list({}, std::move(excepted))}}));
    return yaml::list({}, std::move(items));
}

bool reads_back(ExaminedWords const& words, Case const& baby, Ontology const& ontology) {
    std::vector<bool> done(ontology.steps.size(), false);
    Diagnostics diagnostics;
    read_examined(examined_node(words), ontology, done, diagnostics);
    return !diagnostics.has_errors() && done == baby.step_done;
}

Json statement_json(Statement const& statement, Ontology const& ontology) {
    auto const& id = ontology.at(statement.finding).id.text;
    auto const grade = grade_text(statement, ontology);
    bool const plain = statement.sides == Sides::not_said && grade.empty() && !statement.familial;
    if (plain) return id;
    Json result{{"finding", id}};
    if (statement.sides != Sides::not_said) result["side"] = to_text(statement.sides);
    if (!grade.empty()) result["grade"] = grade;
    if (statement.familial) result["familial"] = true;
    return result;
}

template <class List>
void add_statements(std::string const& key, List const& list, Ontology const& ontology,
                    Json& result) {
    for (auto const& statement : list) {
        if constexpr (std::is_pointer_v<std::decay_t<decltype(statement)>>)
            result[key].push_back(statement_json(*statement, ontology));
        else
            result[key].push_back(statement_json(statement, ontology));
    }
}

void add_facts(Case const& baby, Json& result) {
    if (!baby.id.empty()) result["case"] = baby.id.text;
    if (baby.sex != Sex::not_given) result["sex"] = to_text(baby.sex);
    if (baby.gestation) result["gestation"] = to_text(*baby.gestation);
    if (baby.age) result["age"] = to_text(*baby.age);
    if (baby.born) result["born"] = to_text(*baby.born);
    if (baby.examined_on) result["examined-on"] = to_text(*baby.examined_on);
}

void add_examined(Case const& baby, Ontology const& ontology, Json& result,
                  std::vector<NotSaid>& not_said) {
    auto const words = examined_words(baby, ontology);
    if (words.done.empty()) return;
    for (auto const& word : words.done) result["examined"].push_back(word);
    if (!words.except.empty()) result["examined"].push_back(Json{{"except", words.except}});
    if (!words.exact)
        not_said.push_back({baby.id.text, "examined", "a step and a region share a name"});
}

void add_decisions(Case const& baby, Json& result) {
    if (!baby.decisions) return;
    auto referred = Json::array();
    for (auto const& service : baby.decisions->referred) referred.push_back(service.text);
    result["decisions"] = {{"referred", std::move(referred)}};
    if (baby.decisions->on) result["decisions"]["on"] = to_text(*baby.decisions->on);
}

}  // namespace

std::string grade_text(Statement const& statement, Ontology const& ontology) {
    if (!statement.grade) return {};
    return ontology.at(statement.finding).grades[*statement.grade].text;
}

SplitStatements split_history(Case const& baby, Ontology const& ontology) {
    SplitStatements result;
    for (auto const& statement : baby.present) {
        bool const history = ontology.region_of(statement.finding).history && !statement.familial;
        (history ? result.history : result.findings).push_back(&statement);
    }
    return result;
}

ExaminedWords examined_words(Case const& baby, Ontology const& ontology) {
    ExaminedWords listed, excepted;
    excepted.done.emplace_back("all");
    for (StepId step = 0; step < ontology.steps.size(); ++step) {
        auto const& id = ontology.steps[step].id.text;
        bool const in_all =
            !ontology.regions[ontology.steps[step].region].history && !ontology.steps[step].result;
        bool const done = baby.step_done[step];
        if (done) listed.done.push_back(id);
        if (done && !in_all) excepted.done.push_back(id);
        if (!done && in_all) excepted.except.push_back(id);
    }
    auto const words = [](ExaminedWords const& e) { return e.done.size() + e.except.size(); };
    bool const rather_all = words(excepted) < words(listed);
    for (auto const* choice :
         {rather_all ? &excepted : &listed, rather_all ? &listed : &excepted}) {
        if (reads_back(*choice, baby, ontology)) return *choice;
    }
    listed.exact = false;
    return listed;
}

Json case_json(Case const& baby, Ontology const& ontology, std::vector<NotSaid>& not_said) {
    Json result = Json::object();
    add_facts(baby, result);
    add_examined(baby, ontology, result, not_said);
    auto const split = split_history(baby, ontology);
    add_statements("findings", split.findings, ontology, result);
    add_statements("absent", baby.absent, ontology, result);
    add_statements("unsure", baby.unsure, ontology, result);
    for (auto const& value : baby.measures)
        result["measures"][ontology.measures[value.measure].id.text] = value.as_written.text;
    if (baby.history_none) result["history"] = "none";
    add_statements("history", split.history, ontology, result);
    add_decisions(baby, result);
    return result;
}

}  // namespace asterism
