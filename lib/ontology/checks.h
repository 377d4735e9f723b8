// SPDX-License-Identifier: MIT
#pragma once

#include "base/diagnostic.h"
#include "ontology/ontology.h"

namespace asterism {

/// The checks that need the whole ontology: is-a cycles, names shared without a mark, sources that
/// are not in the bibliography, units that do not convert.
void check_ontology(Ontology const& ontology, Diagnostics& diagnostics);

}  // namespace asterism
