// SPDX-License-Identifier: MIT
#include <algorithm>

#include "render/case_writers.h"

namespace asterism {

namespace {

using Json = nlohmann::ordered_json;

/// Words that need no quotes: ours, and what cannot be taken for a number, a boolean or a list.
bool plain(std::string const& text) {
    auto const word = [](char c) { return (c >= 'a' && c <= 'z') || c == '-'; };
    static std::vector<std::string> const reserved{"true", "false", "yes", "no", "on",
                                                   "off",  "null",  "y",   "n"};
    return !text.empty() && text.front() != '-' && std::all_of(text.begin(), text.end(), word) &&
           std::find(reserved.begin(), reserved.end(), text) == reserved.end();
}

std::string flow(Json const& value) {
    if (value.is_string()) {
        auto const& text = value.get_ref<std::string const&>();
        return plain(text) ? text : value.dump();
    }
    if (!value.is_structured()) return value.dump();
    std::string text;
    for (auto const& [key, item] : value.items()) {
        if (!text.empty()) text += ", ";
        text += value.is_object() ? key + ": " + flow(item) : flow(item);
    }
    return value.is_object() ? "{ " + text + " }" : "[" + text + "]";
}

/// Statements and measures a line each; everything else on the line of its key.
std::string block(std::string const& key, Json const& value) {
    bool const lines = key == "findings" || key == "absent" || key == "unsure" ||
                       key == "measures" || (key == "history" && value.is_array());
    if (!lines) return key + ": " + flow(value) + "\n";
    auto text = key + ":\n";
    for (auto const& [name, item] : value.items())
        text +=
            value.is_object() ? "  " + name + ": " + flow(item) + "\n" : "  - " + flow(item) + "\n";
    return text;
}

}  // namespace

std::string write_yaml_cases(std::vector<Case> const& cases, WriteContext const& context,
                             std::vector<NotSaid>& not_said) {
    std::string text;
    for (auto const& baby : cases) {
        auto const tree = case_json(baby, context.ontology, not_said);
        for (auto const& [key, value] : tree.items()) text += block(key, value);
        if (tree.empty()) text += "{}\n";
    }
    return text;
}

}  // namespace asterism
