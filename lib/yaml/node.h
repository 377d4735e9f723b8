// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/source.h"

namespace asterism::yaml {

enum class Kind { null, scalar, list, map };

std::string_view to_text(Kind kind);

struct Entry;

/// A value read from YAML or JSON, in the order written, knowing its place. Keys of a map are
/// unique.
struct Node {
    Kind kind = Kind::null;
    std::string text;     ///< the scalar's text, unescaped
    bool quoted = false;  ///< written in quotes, so never a number or a boolean
    Span span;
    std::vector<Node> items;
    std::vector<Entry> entries;

    bool is_scalar() const { return kind == Kind::scalar; }
    bool is_list() const { return kind == Kind::list; }
    bool is_map() const { return kind == Kind::map; }
    Word word() const { return {text, span}; }

    /// The value under a key, or null when the map has no such key.
    Node const* find(std::string_view key) const;
};

struct Entry {
    Word key;
    Node value;
};

/// Helpers that make nodes without a file, for values that came from arguments.
Node scalar(Word word);
Node list(Span span, std::vector<Node> items);
Node map(Span span, std::vector<Entry> entries);

/// A deterministic one-line text of the tree, for tests and messages.
std::string to_text(Node const& node);

}  // namespace asterism::yaml
