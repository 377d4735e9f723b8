// SPDX-License-Identifier: MIT
#include "oracle/case_text.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "base/number.h"

namespace asterism::oracle {

namespace {

std::string statement_text(Statement const& statement, Ontology const& ontology) {
    auto const& finding = ontology.findings[statement.finding];
    auto text = fmt::format("{{ finding: {}", finding.id.text);
    if (statement.sides != Sides::not_said)
        text += fmt::format(", side: {}", to_text(statement.sides));
    if (statement.grade) text += fmt::format(", grade: {}", finding.grades[*statement.grade].text);
    if (statement.familial) text += ", familial: true";
    return text + " }";
}

std::string list_text(std::string_view key, std::vector<Statement> const& statements,
                      Ontology const& ontology) {
    if (statements.empty()) return {};
    std::vector<std::string> texts;
    for (auto const& statement : statements) texts.push_back(statement_text(statement, ontology));
    return fmt::format("{}: [ {} ]\n", key, fmt::join(texts, ", "));
}

std::string steps_text(Case const& baby, Ontology const& ontology) {
    std::vector<std::string> done;
    std::vector<std::string> open;
    for (std::size_t i = 0; i < baby.step_done.size(); ++i)
        (baby.step_done[i] ? done : open).push_back(ontology.steps[i].id.text);
    if (done.empty()) return {};
    if (open.size() > done.size()) return fmt::format("examined: [ {} ]\n", fmt::join(done, ", "));
    return fmt::format("examined: [ all, except: [ {} ] ]\n", fmt::join(open, ", "));
}

std::string measures_text(Case const& baby, Ontology const& ontology) {
    std::vector<std::string> texts;
    for (auto const& taken : baby.measures) {
        auto const& measure = ontology.measures[taken.measure];
        texts.push_back(
            fmt::format("{}: {} {}", measure.id.text, to_text(taken.value), measure.unit));
    }
    return texts.empty() ? "" : fmt::format("measures: {{ {} }}\n", fmt::join(texts, ", "));
}

/// Leaves out one item of a list after the other.
template <class List>
void thin(Case& baby, List Case::*list, std::function<bool(Case const&)> const& still_fails) {
    for (std::size_t i = (baby.*list).size(); i-- > 0;) {
        Case smaller = baby;
        (smaller.*list).erase((smaller.*list).begin() + static_cast<std::ptrdiff_t>(i));
        if (still_fails(smaller)) baby = std::move(smaller);
    }
}

template <class Change>
void try_change(Case& baby, std::function<bool(Case const&)> const& still_fails, Change change) {
    Case other = baby;
    change(other);
    if (still_fails(other)) baby = std::move(other);
}

}  // namespace

std::string case_text(Case const& baby, Ontology const& ontology) {
    std::string text;
    if (baby.sex != Sex::not_given) text += fmt::format("sex: {}\n", to_text(baby.sex));
    if (baby.gestation) text += fmt::format("gestation: {}\n", to_text(*baby.gestation));
    if (baby.age) text += fmt::format("age: {}\n", to_text(*baby.age));
    if (baby.history_none) text += "history: none\n";
    text += steps_text(baby, ontology);
    text += list_text("findings", baby.present, ontology);
    text += list_text("absent", baby.absent, ontology);
    text += list_text("unsure", baby.unsure, ontology);
    return text + measures_text(baby, ontology);
}

Case shrunk(Case baby, std::function<bool(Case const&)> const& still_fails) {
    thin(baby, &Case::present, still_fails);
    thin(baby, &Case::absent, still_fails);
    thin(baby, &Case::unsure, still_fails);
    thin(baby, &Case::measures, still_fails);
    try_change(baby, still_fails, [](Case& c) { c.sex = Sex::not_given; });
    try_change(baby, still_fails, [](Case& c) { c.age.reset(); });
    try_change(baby, still_fails, [](Case& c) { c.gestation.reset(); });
    try_change(baby, still_fails, [](Case& c) { c.history_none = false; });
    for (std::size_t i = 0; i < baby.step_done.size(); ++i) {
        if (baby.step_done[i])
            try_change(baby, still_fails, [i](Case& c) { c.step_done[i] = false; });
    }
    return baby;
}

}  // namespace asterism::oracle
