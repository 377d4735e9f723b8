// SPDX-License-Identifier: MIT
#pragma once

#include <optional>

#include "base/diagnostic.h"
#include "yaml/node.h"

namespace asterism::yaml {

/// Reads one YAML document strictly. Refused, each with its place: ill-formed UTF-8, NUL bytes,
/// more than 16 MiB, more than 64 levels, a second document, an empty file, duplicate keys,
/// anchors, aliases, tags. Nothing is returned after a syntax error; other errors leave a tree that
/// further checks can read.
std::optional<Node> read_yaml(SourcePtr const& source, Diagnostics& diagnostics);

/// Reads one JSON value into the same tree, under the same limits; duplicate keys are refused.
std::optional<Node> read_json(SourcePtr const& source, Diagnostics& diagnostics);

/// JSON when the first character that is not a space is `{` or `[` and the name does not end in
/// .yaml or .yml; otherwise YAML.
std::optional<Node> read_any(SourcePtr const& source, Diagnostics& diagnostics);

}  // namespace asterism::yaml
