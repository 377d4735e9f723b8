// SPDX-License-Identifier: MIT
/// Conditions as they stand in the files, word for word, with their names looked up and their
/// numbers read once: what is asked of a million babies is not spelled out for each.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "ontology/ontology.h"
#include "yaml/node.h"

namespace asterism::oracle {

struct FindingText;

/// `side` of a finding's condition.
enum class Place : std::uint8_t { anywhere, left, right, both, one };

/// One bound, in the unit of what it bounds: days, hours, tenths of points, a measure's own unit.
struct Limit {
    enum class Kind : std::uint8_t { above, at_least, below, at_most };

    Kind kind = Kind::at_least;
    double value = 0;
};

enum class Statistic : std::uint8_t { value, z, centile };

struct ConditionText {
    enum class Kind : std::uint8_t {
        finding,
        all,
        any,
        at_least,
        tally,
        constellation,
        measured,
        age,
        gestation,
        sex,
    };

    Kind kind = Kind::all;
    bool denied = false;  ///< `absent`, `none`
    FindingText const* finding = nullptr;
    Place place = Place::anywhere;
    std::optional<std::vector<std::uint32_t>> grades{};  ///< by their place in the finding's grades
    std::vector<ConditionText> parts{};
    std::size_t wanted = 0;  ///< of `at_least`
    std::size_t number = 0;  ///< of the tally, the constellation or the measure
    Statistic statistic = Statistic::value;
    std::string norm{};
    std::vector<Limit> limits{};
    Sex sex = Sex::not_given;
};

/// Who knows the names that a condition uses. Each throws on a name that it does not know.
struct Names {
    std::function<FindingText const&(std::string const&)> finding;
    std::function<std::size_t(std::string const&)> tally;
    std::function<std::size_t(std::string const&)> constellation;
    Ontology const& ontology;
};

/// Throws on what is no condition.
ConditionText read_condition(yaml::Node const& node, Names const& names);

/// The tests of measures in a condition, from left to right.
std::vector<ConditionText const*> measure_tests(ConditionText const& condition);

}  // namespace asterism::oracle
