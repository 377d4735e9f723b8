// SPDX-License-Identifier: MIT
#pragma once

#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "conditions/condition.h"
#include "ontology/names.h"
#include "yaml/node.h"
#include "yaml/shape.h"

namespace asterism {

/// What a condition's names are looked up in.
struct ReadContext {
    Ontology const& ontology;
    NameIndex const& tallies;
    NameIndex const& constellations;
    Diagnostics& diagnostics;
};

/// Reads a condition of any kind; null after an error, which has been reported.
ConditionPtr read_condition(yaml::Node const& node, ReadContext const& context);

/// Reads a list of conditions; empty after an error. An empty list is an error.
std::vector<ConditionPtr> read_conditions(yaml::Node const& node, ReadContext const& context);

/// Looks up the finding of a condition by its id alone: the book has one spelling for each.
bool read_finding(Word const& word, ReadContext const& context, FindingId& target);

/// One kind of condition: the key that announces it, how it is read, what it looks like.
struct ConditionKind {
    std::string_view keyword;
    ConditionPtr (*read)(yaml::Node const& node, ReadContext const& context);
    yaml::Shape (*shape)();
};

/// All kinds. Adding one is a file and a line.
std::vector<ConditionKind> const& condition_kinds();

// One reader and one shape a kind, each in the file of its name.
ConditionPtr read_present(yaml::Node const&, ReadContext const&);
ConditionPtr read_absent(yaml::Node const&, ReadContext const&);
ConditionPtr read_all(yaml::Node const&, ReadContext const&);
ConditionPtr read_any(yaml::Node const&, ReadContext const&);
ConditionPtr read_none(yaml::Node const&, ReadContext const&);
ConditionPtr read_at_least(yaml::Node const&, ReadContext const&);
ConditionPtr read_tally(yaml::Node const&, ReadContext const&);
ConditionPtr read_constellation(yaml::Node const&, ReadContext const&);
ConditionPtr read_measured(yaml::Node const&, ReadContext const&);
ConditionPtr read_age(yaml::Node const&, ReadContext const&);
ConditionPtr read_gestation(yaml::Node const&, ReadContext const&);
ConditionPtr read_sex(yaml::Node const&, ReadContext const&);

// The same again from its parts, for `restore_condition`.
ConditionPtr restore_present(ConditionParts);
ConditionPtr restore_absent(ConditionParts);
ConditionPtr restore_all(ConditionParts);
ConditionPtr restore_any(ConditionParts);
ConditionPtr restore_none(ConditionParts);
ConditionPtr restore_at_least(ConditionParts);
ConditionPtr restore_tally(ConditionParts);
ConditionPtr restore_constellation(ConditionParts);
ConditionPtr restore_measured(ConditionParts);
ConditionPtr restore_age(ConditionParts);
ConditionPtr restore_gestation(ConditionParts);
ConditionPtr restore_sex(ConditionParts);

yaml::Shape present_shape();
yaml::Shape absent_shape();
yaml::Shape all_shape();
yaml::Shape any_shape();
yaml::Shape none_shape();
yaml::Shape at_least_shape();
yaml::Shape tally_shape();
yaml::Shape constellation_shape();
yaml::Shape measured_shape();
yaml::Shape age_shape();
yaml::Shape gestation_shape();
yaml::Shape sex_shape();

}  // namespace asterism
