// SPDX-License-Identifier: MIT
#include "oracle/small_world.h"

#include <map>

#include "cases/contradictions.h"

namespace asterism::oracle {

namespace {

constexpr std::string_view ontology_text = R"(
ontology: { id: small, version: 1.0.0, hpo-version: none }
regions:
  - { region: body, label: body }
  - { region: history, label: history, history: true }
steps:
  - { step: look, region: body, label: looking, how: Look. }
  - { step: feel, region: body, label: feeling, how: Feel. }
  - { step: told, region: history, label: asking, how: Ask. }
findings:
  - { finding: ear-change, label: ear change, step: look, recognise: Seen., hpo: none }
  - { finding: low-ear, label: low ear, step: feel, recognise: Felt., hpo: none, parent: ear-change }
  - { finding: crease, label: crease, step: look, recognise: Seen., hpo: none, laterality: paired }
  - { finding: deep-crease, label: deep crease, step: feel, recognise: Felt., hpo: none, laterality: paired,
      parent: crease }
  - { finding: chin, label: small chin, step: feel, recognise: Felt., hpo: none, grades: [mild, marked] }
  - { finding: foreskin, label: hooded foreskin, step: feel, recognise: Felt., hpo: none, sex: male }
  - { finding: dimple, label: wide dimple, step: look, recognise: Seen., hpo: none }
  - { finding: breech, label: breech, step: told, recognise: Told., hpo: none }
measures:
  - { measure: width, label: width of the dimple, unit: mm, plausible: { from: 0, to: 30 }, step: look,
      instrument: ruler, resolution: 1 }
  - { measure: depth, label: depth of the dimple, unit: mm, plausible: { from: 0, to: 30 }, step: look,
      instrument: meter }
sources:
  - { source: common-practice, authors: none, title: none, journal: none, year: 2031, read: memory }
)";

enum class List { present, absent, unsure };

/// Says one thing of a finding.
std::function<void(Case&)> say(List list, std::string_view id, Sides sides = Sides::not_said,
                               std::optional<std::uint32_t> grade = {}, bool familial = false) {
    Statement statement;
    statement.finding = small_ontology()->finding(id).value();
    statement.as_written.text = id;
    statement.sides = sides;
    statement.grade = grade;
    statement.familial = familial;
    return [list, statement](Case& baby) {
        auto& target = list == List::present  ? baby.present
                       : list == List::absent ? baby.absent
                                              : baby.unsure;
        target.push_back(statement);
    };
}

std::function<void(Case&)> familial(std::string_view id) {
    return say(List::present, id, Sides::not_said, {}, true);
}

std::function<void(Case&)> graded(std::string_view id, std::uint32_t grade) {
    return say(List::present, id, Sides::not_said, grade);
}

std::function<void(Case&)> measured(std::string_view id, double value) {
    auto const measure = small_ontology()->measure(id).value();
    return [measure, value](Case& baby) {
        MeasuredValue taken;
        taken.measure = measure;
        taken.value = value;
        baby.measures.push_back(taken);
    };
}

/// Not stated, present, absent, unsure, and familial where that matters.
Axis plain(std::string_view id, bool may_be_familial) {
    Axis axis{[](Case&) {}, say(List::present, id), say(List::absent, id), say(List::unsure, id)};
    if (may_be_familial) axis.push_back(familial(id));
    return axis;
}

Axis sided(std::string_view id) {
    Axis axis = plain(id, false);
    for (auto const side : {Sides::left, Sides::right, Sides::both})
        axis.push_back(say(List::present, id, side));
    axis.push_back(say(List::absent, id, Sides::left));
    axis.push_back([left = say(List::present, id, Sides::left),
                    right = say(List::absent, id, Sides::right)](Case& baby) {
        left(baby);
        right(baby);
    });
    return axis;
}

Axis chin() {
    auto axis = plain("chin", true);
    axis.push_back(graded("chin", 0));
    axis.push_back(graded("chin", 1));
    return axis;
}

Axis breech() {
    auto axis = plain("breech", false);
    axis.push_back([](Case& baby) { baby.history_none = true; });
    return axis;
}

Axis sexes() {
    Axis axis;
    for (auto const sex : {Sex::not_given, Sex::female, Sex::male, Sex::undetermined})
        axis.push_back([sex](Case& baby) { baby.sex = sex; });
    return axis;
}

/// None, either side of 37w0d, and a week that lies before or after it whatever the day.
Axis gestations() {
    Axis axis{[](Case&) {}};
    for (auto const& [from, to] : {std::pair{258, 258}, {259, 259}, {252, 258}, {259, 265}})
        axis.push_back([from = from, to = to](Case& baby) {
            baby.gestation = Gestation{from, to};
        });
    return axis;
}

Axis ages() {
    Axis axis{[](Case&) {}};
    for (auto const hours : {23, 24})
        axis.push_back([hours](Case& baby) { baby.age = Duration{hours}; });
    return axis;
}

Axis widths(std::string_view id) {
    return {[](Case&) {}, measured(id, 4), measured(id, 5), measured(id, 7)};
}

/// Looking and feeling, each done or not.
Axis steps() {
    Axis axis;
    for (unsigned done = 0; done < 4; ++done) {
        axis.push_back([done](Case& baby) {
            baby.step_done[small_ontology()->step("look").value()] = (done & 1u) != 0;
            baby.step_done[small_ontology()->step("feel").value()] = (done & 2u) != 0;
        });
    }
    return axis;
}

std::map<std::string, Axis> all_axes() {
    std::map<std::string, Axis> axes;
    axes["ear"] = plain("ear-change", true);
    axes["low-ear"] = plain("low-ear", true);
    axes["crease"] = sided("crease");
    axes["deep-crease"] = sided("deep-crease");
    axes["chin"] = chin();
    axes["foreskin"] = plain("foreskin", false);
    axes["dimple"] = plain("dimple", false);
    axes["width"] = widths("width");
    axes["depth"] = widths("depth");
    axes["breech"] = breech();
    axes["sex"] = sexes();
    axes["gestation"] = gestations();
    axes["age"] = ages();
    axes["steps"] = steps();
    return axes;
}

}  // namespace

std::shared_ptr<Ontology const> small_ontology() {
    static auto const ontology = ontology_from(ontology_text);
    return ontology;
}

Axis const& small_axis(std::string const& name) {
    static auto const axes = all_axes();
    return axes.at(name);
}

void for_each_small_case(std::vector<std::string> const& axes,
                         std::function<void(Case const&)> const& visit) {
    std::vector<std::size_t> at(axes.size(), 0);
    for (bool more = true; more;) {
        Case baby;
        baby.step_done.assign(small_ontology()->steps.size(), false);
        for (std::size_t i = 0; i < axes.size(); ++i) small_axis(axes[i])[at[i]](baby);
        Diagnostics diagnostics;
        check_contradictions(baby, *small_ontology(), diagnostics);
        if (!diagnostics.has_errors()) visit(baby);
        more = false;
        for (std::size_t i = 0; i < axes.size() && !more; ++i) {
            more = ++at[i] < small_axis(axes[i]).size();
            if (!more) at[i] = 0;
        }
    }
}

}  // namespace asterism::oracle
