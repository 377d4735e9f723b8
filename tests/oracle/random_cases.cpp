// SPDX-License-Identifier: MIT
#include "oracle/random_cases.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <string>

#include "base/number.h"
#include "base/quantity.h"
#include "cases/contradictions.h"

namespace asterism::oracle {

namespace {

template <class Number>
Number from_environment(char const* name, Number otherwise) {
    auto const* text = std::getenv(name);
    return text ? static_cast<Number>(std::stoull(text)) : otherwise;
}

bool already_stated(Case const& baby, FindingId finding) {
    auto const speaks = [&](std::vector<Statement> const& list) {
        return std::any_of(list.begin(), list.end(),
                           [&](Statement const& s) { return s.finding == finding; });
    };
    return speaks(baby.present) || speaks(baby.absent) || speaks(baby.unsure);
}

}  // namespace

std::uint64_t seed_from_environment() {
    return from_environment<std::uint64_t>("ASTERISM_SEED", 20310402);
}

std::size_t cases_from_environment(std::size_t otherwise) {
    return from_environment<std::size_t>("ASTERISM_RANDOM_CASES", otherwise);
}

std::chrono::seconds seconds_from_environment(std::chrono::seconds otherwise) {
    return from_environment("ASTERISM_RANDOM_SECONDS", otherwise);
}

CaseMaker::CaseMaker(Subject const& subject, std::uint64_t seed)
    : subject_(subject),
      ontology_(*subject.ontology),
      dice_(seed),
      cut_offs_(ontology_.measures.size()) {
    auto const add = [&](std::vector<yaml::Node const*> const& conditions) {
        Topic topic;
        for (auto const* condition : conditions) add_topic(*condition, topic);
        if (!topic.findings.empty() || !topic.measures.empty()) topics_.push_back(topic);
    };
    for (auto const& rule : subject.book->rules) add({&rule.when});
    for (auto const& derivation : subject.book->derived) add({&derivation.when});
    for (auto const& constellation : subject.book->constellations) {
        std::vector<yaml::Node const*> items;
        for (auto const& group : constellation.groups) {
            for (auto const& item : group.items) items.push_back(&item.when);
        }
        add(items);
    }
    for (auto const& item : subject.book->classes)
        classed_.push_back(ontology_.finding(item.finding.text).value());
}

void CaseMaker::add_topic(yaml::Node const& node, Topic& topic) {
    for (auto const* key : {"present", "absent"}) {
        if (auto const* id = node.find(key))
            topic.findings.push_back(ontology_.finding(id->text).value());
    }
    if (auto const* id = node.find("measured")) {
        topic.measures.push_back(ontology_.measure(id->text).value());
        note_cut_offs(node);
    }
    for (auto const& item : node.items) add_topic(item, topic);
    for (auto const& entry : node.entries) add_topic(entry.value, topic);
}

/// Cut-offs in a unit; those in z and centiles are reached by any value.
void CaseMaker::note_cut_offs(yaml::Node const& condition) {
    auto const id = ontology_.measure(condition.find("measured")->text).value();
    for (auto const& [unit, bounds] : condition.entries) {
        auto const factor = conversion(unit.text, ontology_.measures[id].unit);
        if (!factor || unit.text == "measured") continue;
        for (auto const& entry : bounds.entries) {
            auto const number = parse_decimal(entry.value.text);
            if (number) cut_offs_[id].push_back(number->value * *factor);
        }
    }
}

Case CaseMaker::make() {
    Case baby;
    choose_steps(baby);
    choose_facts(baby);
    choose_findings(baby);
    auto const no_history = [&](Statement const& s) {
        return !ontology_.region_of(s.finding).history;
    };
    bool const may_be_none = std::all_of(baby.present.begin(), baby.present.end(), no_history);
    baby.history_none = may_be_none && dice_.in_100(25);
    return baby;
}

/// Nothing done, everything at the bedside, nearly everything, or any part.
void CaseMaker::choose_steps(Case& baby) {
    auto const kind = dice_.below(4);
    static std::vector<unsigned> const likely{0, 100, 94, 50};
    for (auto const& step : ontology_.steps) {
        bool const bedside = !step.result && !ontology_.regions[step.region].history;
        bool const done = dice_.in_100(likely[kind]);
        baby.step_done.push_back(done && (bedside || kind == 3));
    }
}

void CaseMaker::choose_facts(Case& baby) {
    baby.sex = dice_.one_of<Sex>({Sex::not_given, Sex::female, Sex::male, Sex::undetermined});
    if (dice_.in_100(70)) {
        auto const week = static_cast<int>(22 + dice_.below(23)) * 7;
        auto const day = static_cast<int>(dice_.below(7));
        baby.gestation =
            dice_.in_100(30) ? Gestation{week, week + 6} : Gestation{week + day, week + day};
    }
    if (dice_.in_100(70)) {
        static std::vector<int> const round{0,  6,  12, 23,  24,  25,  47,
                                            48, 72, 96, 168, 336, 504, 672};
        baby.age =
            Duration{dice_.in_100(50) ? dice_.one_of(round) : static_cast<int>(dice_.below(800))};
    }
}

void CaseMaker::choose_findings(Case& baby) {
    for (auto topics = dice_.below(4); topics > 0; --topics) {
        auto const& topic = dice_.one_of(topics_);
        for (auto tries = 1 + dice_.below(4); tries > 0 && !topic.findings.empty(); --tries) {
            auto id = dice_.one_of(topic.findings);
            // A more specific finding now and then, all the way down.
            while (!ontology_.findings[id].children.empty() && dice_.in_100(40))
                id = dice_.one_of(ontology_.findings[id].children);
            state(baby, id);
        }
        choose_measures(baby, topic);
    }
    auto const more = dice_.in_100(5) ? 25 : dice_.below(5);
    for (std::size_t i = 0; i < more; ++i) {
        auto const any = static_cast<FindingId>(dice_.below(ontology_.findings.size()));
        state(baby, dice_.in_100(50) && !classed_.empty() ? dice_.one_of(classed_) : any);
    }
}

void CaseMaker::state(Case& baby, FindingId finding) {
    if (already_stated(baby, finding)) return;
    auto const kind = dice_.below(10);
    if (kind < 6) return state_present(baby, finding);
    auto made = statement(finding);
    made.grade.reset();
    made.familial = false;
    add(baby, kind < 8 ? &Case::absent : &Case::unsure, made);
}

/// One statement, or one a side with a grade of its own.
void CaseMaker::state_present(Case& baby, FindingId finding) {
    auto first = statement(finding);
    auto second = statement(finding);
    second.familial = first.familial;
    bool const two =
        ontology_.findings[finding].laterality == Laterality::paired && dice_.in_100(10);
    if (two) first.sides = Sides::left, second.sides = Sides::right;
    add(baby, &Case::present, first);
    if (!two) return;
    if (dice_.in_100(50)) return add(baby, &Case::present, second);
    second.grade.reset();
    second.familial = false;
    add(baby, dice_.in_100(50) ? &Case::absent : &Case::unsure, second);
}

Statement CaseMaker::statement(FindingId id) {
    auto const& finding = ontology_.findings[id];
    Statement statement;
    statement.finding = id;
    statement.as_written = finding.id;
    if (finding.laterality == Laterality::paired && dice_.in_100(60))
        statement.sides = dice_.one_of<Sides>({Sides::left, Sides::right, Sides::both});
    if (!finding.grades.empty() && dice_.in_100(75))
        statement.grade = static_cast<std::uint32_t>(dice_.below(finding.grades.size()));
    statement.familial = dice_.in_100(15);
    return statement;
}

/// Adds a statement, unless that makes a contradiction.
void CaseMaker::add(Case& baby, std::vector<Statement> Case::*list, Statement const& statement) {
    (baby.*list).push_back(statement);
    Diagnostics diagnostics;
    check_contradictions(baby, ontology_, diagnostics);
    if (diagnostics.has_errors()) (baby.*list).pop_back();
}

void CaseMaker::choose_measures(Case& baby, Topic const& topic) {
    for (auto const id : topic.measures) {
        auto const taken = [&](MeasuredValue const& m) { return m.measure == id; };
        bool const again = std::any_of(baby.measures.begin(), baby.measures.end(), taken);
        if (again || !ontology_.measures[id].instrument || dice_.in_100(40)) continue;
        MeasuredValue value;
        value.measure = id;
        value.value = value_near_cut_off(id);
        value.as_written = ontology_.measures[id].id;
        baby.measures.push_back(value);
    }
}

double CaseMaker::value_near_cut_off(MeasureId id) {
    auto const& measure = ontology_.measures[id];
    double const step = measure.resolution > 0 ? measure.resolution : 1;
    auto const& [from, to] = measure.plausible;
    double value = from + (to - from) * static_cast<double>(dice_.below(1001)) / 1000;
    if (!cut_offs_[id].empty() && dice_.in_100(75))
        value = dice_.one_of(cut_offs_[id]) + step * (static_cast<double>(dice_.below(9)) - 4) / 2;
    value = std::round(value / step * 2) * step / 2;
    return std::clamp(value, from, to);
}

}  // namespace asterism::oracle
