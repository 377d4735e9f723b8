// SPDX-License-Identifier: MIT
#include "cases/json_fields.h"

#include <fmt/format.h>

#include "base/number.h"
#include "yaml/read.h"

namespace asterism {

namespace {

std::string snake_case(std::string_view name) {
    std::string result;
    for (auto const c : name) {
        bool const upper = c >= 'A' && c <= 'Z';
        if (upper) result += '_';
        result += upper ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return result;
}

bool is_lines(Source const& source) {
    auto const& name = source.name();
    if (name.ends_with(".jsonl") || name.ends_with(".ndjson")) return true;
    auto const text = trim(source.text());
    auto const end = text.find('\n');
    if (end == std::string_view::npos) return false;
    auto const first = trim(text.substr(0, end));
    return first.starts_with('{') && first.ends_with('}') &&
           trim(text.substr(end)).starts_with('{');
}

}  // namespace

yaml::Node const* JsonFields::find(yaml::Node const& object, std::string_view name) const {
    auto const* found = object.find(name);
    if (!found) found = object.find(snake_case(name));
    return found && found->kind != yaml::Kind::null ? found : nullptr;
}

void JsonFields::wrong(yaml::Node const& node, std::string_view name,
                       std::string_view expected) const {
    diagnostics_.error(
        "wrong-form", node.span,
        fmt::format("`{}`: expected {}, found {}", name, expected,
                    node.is_scalar() ? fmt::format("`{}`", node.text)
                                     : fmt::format("a {}", yaml::to_text(node.kind))));
}

bool JsonFields::is_object(yaml::Node const& node, std::string_view what) const {
    if (node.is_map()) return true;
    wrong(node, what, "an object");
    return false;
}

yaml::Node const* JsonFields::object(yaml::Node const& parent, std::string_view name) const {
    auto const* found = find(parent, name);
    return found && is_object(*found, name) ? found : nullptr;
}

std::vector<yaml::Node> const& JsonFields::list(yaml::Node const& object,
                                                std::string_view name) const {
    static std::vector<yaml::Node> const nothing;
    auto const* found = find(object, name);
    if (!found) return nothing;
    if (found->is_list()) return found->items;
    wrong(*found, name, "a list");
    return nothing;
}

Word JsonFields::text(yaml::Node const& object, std::string_view name) const {
    auto const* found = find(object, name);
    if (!found) return {};
    if (found->is_scalar() && found->quoted) return found->word();
    wrong(*found, name, "a text");
    return {};
}

Word JsonFields::number(yaml::Node const& object, std::string_view name) const {
    auto const* found = find(object, name);
    if (!found) return {};
    bool const numeric = found->is_scalar() && !found->quoted &&
                         found->text.find_first_not_of("+-.0123456789eE") == std::string::npos;
    if (numeric) return found->word();
    wrong(*found, name, "a number");
    return {};
}

std::optional<bool> JsonFields::flag(yaml::Node const& object, std::string_view name) const {
    auto const* found = find(object, name);
    if (!found) return std::nullopt;
    if (found->is_scalar() && !found->quoted && found->text == "true") return true;
    if (found->is_scalar() && !found->quoted && found->text == "false") return false;
    wrong(*found, name, "true or false");
    return std::nullopt;
}

std::vector<yaml::Node> read_json_values(SourcePtr const& source, Diagnostics& diagnostics) {
    std::vector<yaml::Node> values;
    if (!is_lines(*source)) {
        if (auto value = yaml::read_json(source, diagnostics)) values.push_back(std::move(*value));
        return values;
    }
    std::uint32_t number = source->first_line();
    for (std::size_t begin = 0; begin < source->text().size(); ++number) {
        auto const line = source->line(number);
        begin = source->line_start(number - source->first_line() + 1);
        if (trim(line).empty()) continue;
        auto const piece = make_source(source->name(), std::string(line), number);
        if (auto value = yaml::read_json(piece, diagnostics)) values.push_back(std::move(*value));
    }
    if (values.empty() && !diagnostics.has_errors())
        diagnostics.error("empty", {source, 0, 0}, "the file is empty");
    return values;
}

}  // namespace asterism
