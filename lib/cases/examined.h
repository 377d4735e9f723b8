// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "base/diagnostic.h"
#include "ontology/ontology.h"
#include "yaml/node.h"
#include "yaml/shape.h"

namespace asterism {

/// What `examined` may look like.
yaml::Shape examined_shape();

/// Reads `examined`: `all`, `none`, the name of a step or of a region (all its steps), or a list of
/// these in which `{ except: [...] }` takes steps out again. `all` means exam steps; the history
/// and the results of tests stand apart.
void read_examined(yaml::Node const& node, Ontology const& ontology, std::vector<bool>& step_done,
                   Diagnostics& diagnostics);

}  // namespace asterism
