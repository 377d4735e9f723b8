// SPDX-License-Identifier: MIT
/// Conditions as they stand in the files.
#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "base/number.h"
#include "base/quantity.h"
#include "base/time.h"
#include "oracle/judge.h"
#include "oracle/kleene.h"

namespace asterism::oracle {

namespace {

/// What a value known to lie between `low` and `high` is to one bound.
Truth meets(std::string const& bound, double limit, double low, double high) {
    auto const fits = [&](double value) {
        if (bound == "above") return value > limit;
        if (bound == "at-least") return value >= limit;
        if (bound == "below") return value < limit;
        return value <= limit;
    };
    if (fits(low) && fits(high)) return Truth::yes;
    return fits(low) || fits(high) ? Truth::unknown : Truth::no;
}

/// All bounds together; `number` reads one of them.
template <class Number>
Truth within(yaml::Node const& bounds, double low, double high, Number number) {
    auto value = Truth::yes;
    for (auto const& [key, limit] : bounds.entries) {
        if (key.text == "between") {
            value = both(value, meets("at-least", number(limit.items[0].text), low, high));
            value = both(value, meets("at-most", number(limit.items[1].text), low, high));
        } else {
            value = both(value, meets(key.text, number(limit.text), low, high));
        }
    }
    return value;
}

double plain_number(std::string const& text) { return parse_decimal(trim(text)).value().value; }

/// A threshold in tenths, free of the dust that binary fractions leave.
double tenths(yaml::Node const& node) {
    double const value = plain_number(node.text) * 10;
    return std::abs(value - std::round(value)) < 1e-6 ? std::round(value) : value;
}

Truth some(std::vector<Truth> const& values) {
    auto result = Truth::no;
    for (auto const value : values) result = either(result, value);
    return result;
}

Truth every(std::vector<Truth> const& values) {
    auto result = Truth::yes;
    for (auto const value : values) result = both(result, value);
    return result;
}

Truth at_least(int wanted, std::vector<Truth> const& values) {
    auto const certain = std::count(values.begin(), values.end(), Truth::yes);
    auto const open = std::count(values.begin(), values.end(), Truth::unknown);
    if (certain >= wanted) return Truth::yes;
    return certain + open >= wanted ? Truth::unknown : Truth::no;
}

}  // namespace

Truth Judge::holds(yaml::Node const& c, Asker const& asker) {
    if (auto const* id = c.find("present"))
        return finding_test(id->text, c.find("side"), c.find("grade"), asker);
    if (auto const* id = c.find("absent"))
        return opposite(finding_test(id->text, c.find("side"), c.find("grade"), asker));
    if (auto const* list = c.find("all")) return every(all_of(*list, asker));
    if (auto const* list = c.find("any")) return some(all_of(*list, asker));
    if (auto const* list = c.find("none")) return opposite(some(all_of(*list, asker)));
    if (auto const* list = c.find("of"))
        return at_least(std::stoi(c.find("at-least")->text), all_of(*list, asker));
    if (c.find("tally")) return tally_test(c);
    if (auto const* id = c.find("constellation")) return reached(id->text);
    if (c.find("measured")) return measure_test(c, asker);
    if (auto const* bounds = c.find("age")) return age_test(*bounds);
    if (auto const* bounds = c.find("gestation")) return gestation_test(*bounds);
    if (auto const* sex = c.find("sex")) return sex_test(sex->text);
    throw std::logic_error("a condition that the oracle does not know: " + yaml::to_text(c));
}

std::vector<Truth> Judge::all_of(yaml::Node const& list, Asker const& asker) {
    std::vector<Truth> values;
    for (auto const& item : list.items) values.push_back(holds(item, asker));
    return values;
}

Truth Judge::tally_test(yaml::Node const& condition) {
    auto const bounds = tally(condition.find("tally")->text);
    auto const low = static_cast<double>(bounds.low);
    auto const high = static_cast<double>(bounds.high);
    if (auto const* least = condition.find("at-least"))
        return high < tenths(*least)   ? Truth::no
               : low >= tenths(*least) ? Truth::yes
                                       : Truth::unknown;
    auto const most = tenths(*condition.find("at-most"));
    return low > most ? Truth::no : high <= most ? Truth::yes : Truth::unknown;
}

/// Between which numbers the measure lies: half the smallest division of tape and ruler either way.
std::optional<Interval> Judge::band(std::string const& id, std::string const& statistic,
                                    std::string const& norm) const {
    auto const given = numbers_.find(id);
    if (statistic == "z" || statistic == "centile") {
        if (given == numbers_.end()) return std::nullopt;
        auto const& by_norm = statistic == "z" ? given->second.z : given->second.centile;
        auto const found = by_norm.find(norm);
        return found == by_norm.end() ? std::nullopt : std::optional(found->second);
    }
    auto const& measure = *tables_.measures.at(id);
    for (auto const& taken : baby_.measures) {
        if (tables_.ontology.measures[taken.measure].id.text != id) continue;
        bool const by_eye =
            measure.instrument == Instrument::tape || measure.instrument == Instrument::ruler;
        double const margin = by_eye ? measure.resolution / 2 : 0;
        return Interval{taken.value - margin, taken.value + margin};
    }
    return given == numbers_.end() ? std::nullopt : given->second.value;
}

/// The comparison, when the measure was taken and has such a number.
std::optional<Truth> Judge::compare(yaml::Node const& condition) const {
    auto const id = condition.find("measured")->text;
    auto const* norm = condition.find("norm");
    for (auto const& [key, bounds] : condition.entries) {
        if (key.text == "measured" || key.text == "norm") continue;
        auto const value = band(id, key.text, norm ? norm->text : "");
        if (!value) return std::nullopt;
        bool const has_unit = key.text != "z" && key.text != "centile";
        double const factor =
            has_unit ? conversion(key.text, tables_.measures.at(id)->unit).value() : 1;
        return within(bounds, value->low, value->high,
                      [&](std::string const& text) { return plain_number(text) * factor; });
    }
    throw std::logic_error("a measure without bounds");
}

Truth Judge::measure_test(yaml::Node const& condition, Asker const& asker) {
    auto const value = compare(condition);
    if (asker.deriving.empty()) {
        if (value) return *value;
        return unrecorded_ == Unrecorded::is_normal ? Truth::no : Truth::unknown;
    }
    if (!value) return Truth::no;
    auto const classed = tables_.classes.find(asker.deriving);
    bool const red_flag =
        classed != tables_.classes.end() && classed->second->value == FindingClass::red_flag;
    return red_flag ? certainly(*value != Truth::no) : *value;
}

Truth Judge::age_test(yaml::Node const& bounds) const {
    if (!baby_.age) return Truth::unknown;
    return within(bounds, baby_.age->hours, baby_.age->hours, [](std::string const& text) {
        return static_cast<double>(parse_duration(text).value().hours);
    });
}

Truth Judge::gestation_test(yaml::Node const& bounds) const {
    if (!baby_.gestation) return Truth::unknown;
    return within(bounds, baby_.gestation->min_days, baby_.gestation->max_days,
                  [](std::string const& text) {
                      return static_cast<double>(parse_gestation(text).value().min_days);
                  });
}

Truth Judge::sex_test(std::string const& sex) const {
    if (baby_.sex == Sex::female) return certainly(sex == "female");
    if (baby_.sex == Sex::male) return certainly(sex == "male");
    return Truth::unknown;
}

}  // namespace asterism::oracle
