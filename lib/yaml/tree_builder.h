// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "yaml/node.h"

namespace asterism::yaml {

/// Builds the tree from a stream of events, whatever the syntax they come from; reports duplicate
/// and non-scalar keys. A node that is a map's value takes the key's place when it has none of its
/// own.
class TreeBuilder {
public:
    explicit TreeBuilder(Diagnostics& diagnostics) : diagnostics_(diagnostics) {}

    void scalar(Word word, bool quoted);
    void null(Span span);
    void begin(Kind kind, Span span);
    void end(std::uint32_t offset);

    int depth() const { return static_cast<int>(open_.size()); }
    std::optional<Node> take() { return std::move(root_); }

private:
    struct Open {
        Node node;
        std::optional<Word> key;
    };

    void place(Node node);
    bool wants_key() const;
    void accept_key(Node const& node);
    void report_duplicate(Word const& key, Word const& first);

    Diagnostics& diagnostics_;
    std::vector<Open> open_;
    std::optional<Node> root_;
};

}  // namespace asterism::yaml
