// SPDX-License-Identifier: MIT
#pragma once

#include <memory>

#include "base/diagnostic.h"
#include "norms/standard.h"
#include "ontology/ontology.h"

namespace asterism {

/// Reads the `norms:` sections of an ontology and the tables beside them. Every problem is reported
/// at its place, in the section or in the table: unknown keys, measures and sources with the
/// nearest known name, numbers that do not go together, a table that is missing, unreadable or used
/// by no norm. After an error the norms that could be read are left out and nothing is returned.
std::shared_ptr<norms::Standards const> read_standards(Ontology const& ontology,
                                                       Diagnostics& diagnostics);

/// The name under which a table that a user supplies for a norm is looked up.
std::string supplied_table_name(std::string_view norm);

}  // namespace asterism
