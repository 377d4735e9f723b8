// SPDX-License-Identifier: MIT
#include "batch/json_text.h"

#include <fmt/format.h>

namespace asterism::batch {

namespace {

void add_quoted(std::string_view text, std::string& out) {
    out += '"';
    for (char const c : text) {
        if (c == '"' || c == '\\') out += '\\';
        if (static_cast<unsigned char>(c) < 0x20)
            out += fmt::format("\\u{:04x}", static_cast<int>(c));
        else
            out += c;
    }
    out += '"';
}

void add(yaml::Node const& node, bool bare, std::string& out);

void add_list(std::vector<yaml::Node> const& items, std::string& out) {
    out += '[';
    for (auto const& item : items) {
        if (&item != &items.front()) out += ',';
        add(item, false, out);
    }
    out += ']';
}

void add_map(std::vector<yaml::Entry> const& entries, std::string& out) {
    out += '{';
    for (auto const& entry : entries) {
        if (&entry != &entries.front()) out += ',';
        add_quoted(entry.key.text, out);
        out += ':';
        add(entry.value, entry.key.text == "familial", out);
    }
    out += '}';
}

void add(yaml::Node const& node, bool bare, std::string& out) {
    if (node.is_map()) return add_map(node.entries, out);
    if (node.is_list()) return add_list(node.items, out);
    if (bare && (node.text == "true" || node.text == "false"))
        out += node.text;
    else
        add_quoted(node.text, out);
}

}  // namespace

std::string json_text(yaml::Node const& node) {
    std::string out;
    add(node, false, out);
    return out;
}

}  // namespace asterism::batch
