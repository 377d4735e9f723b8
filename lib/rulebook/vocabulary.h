// SPDX-License-Identifier: MIT
#pragma once

#include "rulebook/rulebook.h"
#include "yaml/reader.h"

namespace asterism {

/// Readers of the closed word lists, shared by every table that uses them.
yaml::Reader<FindingClass> finding_class_reader();
yaml::Reader<Urgency> urgency_reader();
yaml::Reader<KeyKind> key_kind_reader();
yaml::Reader<Strength> strength_reader();

}  // namespace asterism
