// SPDX-License-Identifier: MIT
#include "yaml/tree_builder.h"

#include <fmt/format.h>

namespace asterism::yaml {

void TreeBuilder::scalar(Word word, bool quoted) {
    Node node = yaml::scalar(std::move(word));
    node.quoted = quoted;
    place(std::move(node));
}

void TreeBuilder::null(Span span) {
    Node node;
    node.span = std::move(span);
    // An empty value has no place of its own: the event carries the place of whatever follows it.
    if (!open_.empty() && open_.back().key) node.span = open_.back().key->span;
    place(std::move(node));
}

void TreeBuilder::begin(Kind kind, Span span) {
    Node node;
    node.kind = kind;
    node.span = std::move(span);
    open_.push_back({std::move(node), std::nullopt});
}

void TreeBuilder::end(std::uint32_t offset) {
    Node node = std::move(open_.back().node);
    open_.pop_back();
    node.span.end = std::max(node.span.begin, offset);
    place(std::move(node));
}

bool TreeBuilder::wants_key() const {
    return !open_.empty() && open_.back().node.is_map() && !open_.back().key;
}

void TreeBuilder::place(Node node) {
    if (wants_key()) return accept_key(node);
    if (open_.empty()) {
        root_ = std::move(node);
    } else if (open_.back().node.is_list()) {
        open_.back().node.items.push_back(std::move(node));
    } else {
        auto& open = open_.back();
        auto const* first = open.node.find(open.key->text);
        if (!first) open.node.entries.push_back({std::move(*open.key), std::move(node)});
        open.key.reset();
    }
}

void TreeBuilder::accept_key(Node const& node) {
    auto& open = open_.back();
    open.key = node.word();
    if (!node.is_scalar()) {
        diagnostics_.error(
            "yaml-key", node.span,
            fmt::format("expected a plain word as key, found {}", to_text(node.kind)));
    }
    for (auto const& entry : open.node.entries) {
        if (entry.key.text == node.text) report_duplicate(*open.key, entry.key);
    }
}

void TreeBuilder::report_duplicate(Word const& key, Word const& first) {
    diagnostics_.add({"duplicate-key",
                      Severity::error,
                      fmt::format("the key `{}` stands twice in one map", key.text),
                      key.span,
                      {{first.span, "first written here"}},
                      "remove one of the two"});
}

}  // namespace asterism::yaml
