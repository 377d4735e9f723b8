// SPDX-License-Identifier: MIT
#pragma once

#include <string>

#include "yaml/node.h"

namespace asterism::batch {

/// A tree without places as one line of JSON. Scalars become texts, except that `familial` takes
/// `true` and `false`; `yaml::read_json` reads the same tree from it.
std::string json_text(yaml::Node const& node);

}  // namespace asterism::batch
