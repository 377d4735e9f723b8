// SPDX-License-Identifier: MIT
#include "yaml/node.h"

#include <fmt/format.h>

namespace asterism::yaml {

std::string_view to_text(Kind kind) {
    switch (kind) {
        case Kind::null: return "nothing";
        case Kind::scalar: return "a text";
        case Kind::list: return "a list";
        case Kind::map: return "a map";
    }
    return "nothing";
}

Node const* Node::find(std::string_view key) const {
    for (auto const& entry : entries) {
        if (entry.key.text == key) return &entry.value;
    }
    return nullptr;
}

Node scalar(Word word) {
    Node node;
    node.kind = Kind::scalar;
    node.text = std::move(word.text);
    node.span = std::move(word.span);
    return node;
}

Node list(Span span, std::vector<Node> items) {
    Node node;
    node.kind = Kind::list;
    node.span = std::move(span);
    node.items = std::move(items);
    return node;
}

Node map(Span span, std::vector<Entry> entries) {
    Node node;
    node.kind = Kind::map;
    node.span = std::move(span);
    node.entries = std::move(entries);
    return node;
}

std::string to_text(Node const& node) {
    std::string inside;
    auto const comma = [&] { return inside.empty() ? "" : ", "; };
    switch (node.kind) {
        case Kind::null: return "null";
        case Kind::scalar: return node.quoted ? fmt::format("'{}'", node.text) : node.text;
        case Kind::list:
            for (auto const& item : node.items) inside += comma() + to_text(item);
            return "[" + inside + "]";
        case Kind::map:
            for (auto const& [key, value] : node.entries)
                inside += fmt::format("{}{}: {}", comma(), key.text, to_text(value));
            return "{" + inside + "}";
    }
    return {};
}

}  // namespace asterism::yaml
