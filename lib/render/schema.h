// SPDX-License-Identifier: MIT
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include <nlohmann/json_fwd.hpp>

#include "yaml/shape.h"

namespace asterism {

/// What shapes refer to by name: forms that contain themselves or stand in a later room, and the
/// words offered where something is named.
struct SchemaNames {
    std::map<std::string, yaml::Shape> forms;                 ///< `condition`, `case`, ...
    std::map<std::string, std::vector<std::string>> offered;  ///< `finding`, `service`, ...
};

/// A JSON Schema (draft-07) of a value of this shape. Names are offered for completion but any text
/// is accepted: which names exist depends on the book at hand, and the program tells. A text may be
/// written as any scalar, since the program reads it as it stands.
nlohmann::ordered_json schema_json(std::string_view title, yaml::Shape const& shape,
                                   SchemaNames const& names);

}  // namespace asterism
