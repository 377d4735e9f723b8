// SPDX-License-Identifier: MIT
#include "oracle/condition_text.h"

#include <cmath>
#include <stdexcept>

#include "base/number.h"
#include "base/quantity.h"
#include "base/time.h"
#include "oracle/tables.h"

namespace asterism::oracle {

namespace {

using Kind = ConditionText::Kind;

double plain_number(std::string const& text) { return parse_decimal(trim(text)).value().value; }

/// A threshold in tenths, free of the dust that binary fractions leave.
double tenths(std::string const& text) {
    double const value = plain_number(text) * 10;
    return std::abs(value - std::round(value)) < 1e-6 ? std::round(value) : value;
}

double hours(std::string const& text) {
    return static_cast<double>(parse_duration(text).value().hours);
}

double days(std::string const& text) {
    return static_cast<double>(parse_gestation(text).value().min_days);
}

Limit::Kind kind_of_limit(std::string const& word) {
    if (word == "above") return Limit::Kind::above;
    if (word == "at-least") return Limit::Kind::at_least;
    if (word == "below") return Limit::Kind::below;
    if (word == "at-most") return Limit::Kind::at_most;
    throw std::logic_error("a bound that the oracle does not know: " + word);
}

/// All bounds; `number` reads one of them.
template <class Number>
std::vector<Limit> limits(yaml::Node const& bounds, Number number) {
    std::vector<Limit> result;
    for (auto const& [key, limit] : bounds.entries) {
        if (key.text == "between") {
            result.push_back({Limit::Kind::at_least, number(limit.items[0].text)});
            result.push_back({Limit::Kind::at_most, number(limit.items[1].text)});
        } else {
            result.push_back({kind_of_limit(key.text), number(limit.text)});
        }
    }
    return result;
}

Place place_of(std::string const& word) {
    if (word == "left") return Place::left;
    if (word == "right") return Place::right;
    if (word == "both") return Place::both;
    if (word == "one") return Place::one;
    throw std::logic_error("a side that the oracle does not know: " + word);
}

std::vector<std::string> words(yaml::Node const& node) {
    if (node.is_scalar()) return {node.text};
    std::vector<std::string> result;
    for (auto const& item : node.items) result.push_back(item.text);
    return result;
}

std::vector<std::uint32_t> grades_of(Finding const& finding, yaml::Node const& node) {
    std::vector<std::uint32_t> result;
    for (auto const& word : words(node)) {
        for (std::uint32_t i = 0; i < finding.grades.size(); ++i) {
            if (finding.grades[i].text == word) result.push_back(i);
        }
    }
    return result;
}

ConditionText of_finding(yaml::Node const& node, std::string const& id, bool denied,
                         Names const& names) {
    ConditionText condition{Kind::finding, denied, &names.finding(id)};
    if (auto const* side = node.find("side")) condition.place = place_of(side->text);
    if (auto const* grade = node.find("grade"))
        condition.grades = grades_of(*condition.finding->finding, *grade);
    return condition;
}

ConditionText of_list(Kind kind, bool denied, yaml::Node const& list, Names const& names) {
    ConditionText condition{kind, denied};
    for (auto const& item : list.items) condition.parts.push_back(read_condition(item, names));
    return condition;
}

ConditionText of_tally(yaml::Node const& node, std::string const& id, Names const& names) {
    ConditionText condition{Kind::tally};
    condition.number = names.tally(id);
    if (auto const* least = node.find("at-least"))
        condition.limits = {{Limit::Kind::at_least, tenths(least->text)}};
    else
        condition.limits = {{Limit::Kind::at_most, tenths(node.find("at-most")->text)}};
    return condition;
}

Statistic statistic_of(std::string const& key) {
    if (key == "z") return Statistic::z;
    return key == "centile" ? Statistic::centile : Statistic::value;
}

ConditionText of_measure(yaml::Node const& node, std::string const& id, Names const& names) {
    ConditionText condition{Kind::measured};
    condition.number = names.ontology.measure(id).value();
    if (auto const* norm = node.find("norm")) condition.norm = norm->text;
    for (auto const& [key, bounds] : node.entries) {
        if (key.text == "measured" || key.text == "norm") continue;
        condition.statistic = statistic_of(key.text);
        bool const has_unit = condition.statistic == Statistic::value;
        auto const& unit = names.ontology.measures[condition.number].unit;
        double const factor = has_unit ? conversion(key.text, unit).value() : 1;
        condition.limits =
            limits(bounds, [&](std::string const& text) { return plain_number(text) * factor; });
        return condition;
    }
    throw std::logic_error("a measure without bounds");
}

ConditionText of_sex(std::string const& word) {
    ConditionText condition{Kind::sex};
    condition.sex = word == "female" ? Sex::female : Sex::male;
    return condition;
}

template <class Number>
ConditionText of_bounds(Kind kind, yaml::Node const& bounds, Number number) {
    ConditionText condition{kind};
    condition.limits = limits(bounds, number);
    return condition;
}

void collect_measure_tests(ConditionText const& condition,
                           std::vector<ConditionText const*>& tests) {
    if (condition.kind == Kind::measured) tests.push_back(&condition);
    for (auto const& part : condition.parts) collect_measure_tests(part, tests);
}

}  // namespace

ConditionText read_condition(yaml::Node const& c, Names const& names) {
    if (auto const* id = c.find("present")) return of_finding(c, id->text, false, names);
    if (auto const* id = c.find("absent")) return of_finding(c, id->text, true, names);
    if (auto const* list = c.find("all")) return of_list(Kind::all, false, *list, names);
    if (auto const* list = c.find("any")) return of_list(Kind::any, false, *list, names);
    if (auto const* list = c.find("none")) return of_list(Kind::any, true, *list, names);
    if (auto const* list = c.find("of")) {
        auto condition = of_list(Kind::at_least, false, *list, names);
        condition.wanted = std::stoul(c.find("at-least")->text);
        return condition;
    }
    if (auto const* id = c.find("tally")) return of_tally(c, id->text, names);
    if (auto const* id = c.find("constellation")) {
        ConditionText condition{Kind::constellation};
        condition.number = names.constellation(id->text);
        return condition;
    }
    if (auto const* id = c.find("measured")) return of_measure(c, id->text, names);
    if (auto const* bounds = c.find("age")) return of_bounds(Kind::age, *bounds, hours);
    if (auto const* bounds = c.find("gestation")) return of_bounds(Kind::gestation, *bounds, days);
    if (auto const* sex = c.find("sex")) return of_sex(sex->text);
    throw std::logic_error("a condition that the oracle does not know: " + yaml::to_text(c));
}

std::vector<ConditionText const*> measure_tests(ConditionText const& condition) {
    std::vector<ConditionText const*> tests;
    collect_measure_tests(condition, tests);
    return tests;
}

}  // namespace asterism::oracle
