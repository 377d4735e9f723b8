// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "yaml/node.h"

namespace asterism {

/// The members of foreign JSON objects, which may be missing, null (the same as missing) or of the
/// wrong form (an error at the place). A name is also found in its snake_case spelling, which
/// protobuf readers must accept.
class JsonFields {
public:
    explicit JsonFields(Diagnostics& diagnostics) : diagnostics_(diagnostics) {}

    /// The member, or null.
    yaml::Node const* find(yaml::Node const& object, std::string_view name) const;
    /// The member when it is an object; null, with an error when it is something else.
    yaml::Node const* object(yaml::Node const& parent, std::string_view name) const;
    /// The items of a list; none when the member is missing.
    std::vector<yaml::Node> const& list(yaml::Node const& object, std::string_view name) const;
    /// A text; empty when the member is missing.
    Word text(yaml::Node const& object, std::string_view name) const;
    /// A number as it is written.
    Word number(yaml::Node const& object, std::string_view name) const;
    /// `true` or `false`, unquoted.
    std::optional<bool> flag(yaml::Node const& object, std::string_view name) const;
    /// False, with an error, when a list item is no object.
    bool is_object(yaml::Node const& node, std::string_view what) const;

    Diagnostics& diagnostics() const { return diagnostics_; }

private:
    void wrong(yaml::Node const& node, std::string_view name, std::string_view expected) const;

    Diagnostics& diagnostics_;
};

/// The top-level values of a text: one, or one a line (`.jsonl`, `.ndjson`, or a first line that is
/// whole and followed by another object). Each piece knows its line.
std::vector<yaml::Node> read_json_values(SourcePtr const& source, Diagnostics& diagnostics);

}  // namespace asterism
