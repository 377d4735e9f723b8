// SPDX-License-Identifier: MIT
#pragma once

#include "base/diagnostic.h"
#include "cases/case.h"
#include "yaml/node.h"

namespace asterism {

/// Reads one case and looks up its names. Whatever was understood is returned even when there are
/// errors, so that a red flag in a case with a slip elsewhere is not lost; the caller must look at
/// `diagnostics` before it gives any verdict.
Case read_case(yaml::Node const& node, Ontology const& ontology, Diagnostics& diagnostics);

/// As above, from a YAML or JSON text.
Case read_case(SourcePtr const& source, Ontology const& ontology, Diagnostics& diagnostics);

}  // namespace asterism
