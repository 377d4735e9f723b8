// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>

#include "cases/hpo_mapping.h"
#include "cases/json_fields.h"
#include "cases/term_statements.h"

namespace asterism {

/// A time element that is an age after birth; the other five kinds cannot be said by a case.
/// `other` names the kind that was found instead.
struct PacketTime {
    std::optional<Duration> age;
    std::string other;
    Span span;
};

PacketTime read_time(yaml::Node const& element, JsonFields const& fields);

/// The modifiers and the severity of a feature.
struct FeatureQualifiers {
    Sides sides = Sides::not_said;
    std::string severity;
};

/// Reads laterality (HP:0012831) and severity (HP:0012824); what a case cannot say is listed.
FeatureQualifiers read_qualifiers(yaml::Node const& feature, JsonFields const& fields,
                                  ImportedCase& result);

/// Reads the subject: sex, age at the last encounter, date of birth.
void read_subject(yaml::Node const& subject, JsonFields const& fields, ImportedCase& result);

/// Reads measurements that have a LOINC code of ours, and gestation at birth.
void read_measurements(yaml::Node const& packet, JsonFields const& fields, Ontology const& ontology,
                       ImportedCase& result);

/// Warns of every member whose name is none of the known ones.
void warn_of_unknown(yaml::Node const& object, std::string_view what,
                     std::vector<std::string> const& known, JsonFields const& fields);

}  // namespace asterism
