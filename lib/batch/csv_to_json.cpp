// SPDX-License-Identifier: MIT
#include "batch/csv_to_json.h"

#include <fmt/format.h>

#include "base/number.h"

namespace asterism::batch {

namespace {

std::string quoted(std::string_view text) {
    std::string result = "\"";
    for (char const c : text) {
        if (c == '"' || c == '\\') result += '\\';
        if (static_cast<unsigned char>(c) < 0x20) {
            result += fmt::format("\\u{:04x}", static_cast<int>(c));
        } else {
            result += c;
        }
    }
    return result + '"';
}

std::vector<std::string_view> split(std::string_view text, std::string_view separators) {
    std::vector<std::string_view> parts;
    while (true) {
        auto const end = std::min(text.find_first_of(separators), text.size());
        if (auto const part = trim(text.substr(0, end)); !part.empty()) parts.push_back(part);
        if (end == text.size()) return parts;
        text.remove_prefix(end + 1);
    }
}

void add(std::string& list, std::string_view item) {
    if (!list.empty()) list += ',';
    list += item;
}

std::string field(std::string_view key, std::string_view value) {
    return fmt::format("{}:{}", quoted(key), value);
}

/// `familial` and the sides need no key; anything else is a grade.
std::string qualifier(std::string_view text) {
    if (text == "familial") return field("familial", "true");
    bool const side = text == "left" || text == "right" || text == "both" || text == "bilateral";
    return field(side ? "side" : "grade", quoted(text));
}

std::string statement(std::string_view item) {
    auto const parts = split(item, ";");
    if (parts.size() < 2) return quoted(parts.empty() ? item : parts.front());
    auto fields = field("finding", quoted(parts.front()));
    for (std::size_t i = 1; i < parts.size(); ++i) add(fields, qualifier(parts[i]));
    return fmt::format("{{{}}}", fields);
}

std::string statements(std::string_view cell) {
    std::string list;
    for (auto const item : split(cell, "|")) add(list, statement(item));
    return fmt::format("[{}]", list);
}

std::string examined(std::string_view cell) {
    std::string list;
    for (auto const item : split(cell, "|,")) {
        auto const equals = item.find('=');
        bool const except =
            equals != std::string_view::npos && trim(item.substr(0, equals)) == "except";
        add(list, except ? fmt::format("{{\"except\":[{}]}}", quoted(trim(item.substr(equals + 1))))
                         : quoted(item));
    }
    return fmt::format("[{}]", list);
}

std::string measures(std::string_view cell) {
    std::string list;
    for (auto const item : split(cell, "|")) {
        auto const equals = std::min(item.find('='), item.size());
        auto const value = item.substr(std::min(equals + 1, item.size()));
        add(list, field(trim(item.substr(0, equals)), quoted(trim(value))));
    }
    return fmt::format("{{{}}}", list);
}

std::string names(std::string_view cell) {
    std::string list;
    if (cell != "none") {
        for (auto const item : split(cell, "|")) add(list, quoted(item));
    }
    return fmt::format("[{}]", list);
}

std::string value(std::string_view column, std::string_view cell) {
    if (column == "examined") return examined(cell);
    if (column == "measures") return measures(cell);
    if (column == "history" && cell == "none") return quoted(cell);
    if (column == "findings" || column == "absent" || column == "unsure" || column == "history")
        return statements(cell);
    return quoted(cell);
}

std::string state_list(std::vector<LongRow> const& rows, std::string_view state) {
    std::string list;
    for (auto const& row : rows) {
        if (row.finding.empty() || (row.state.empty() ? "present" : row.state) != state) continue;
        auto fields = field("finding", quoted(row.finding));
        if (!row.side.empty()) add(fields, field("side", quoted(row.side)));
        bool const plain = row.familial == "true" || row.familial == "false";
        if (!row.familial.empty())
            add(fields, field("familial", plain ? row.familial : quoted(row.familial)));
        add(list, fmt::format("{{{}}}", fields));
    }
    return list;
}

}  // namespace

std::string json_case(std::vector<std::pair<std::string_view, std::string_view>> const& cells) {
    std::string fields, decisions;
    for (auto const& [column, cell] : cells) {
        if (cell.empty()) continue;
        if (column == "referred") {
            add(decisions, field(column, names(cell)));
        } else if (column == "decided-on") {
            add(decisions, field("on", quoted(cell)));
        } else {
            add(fields, field(column, value(column, cell)));
        }
    }
    if (!decisions.empty()) add(fields, field("decisions", fmt::format("{{{}}}", decisions)));
    return fmt::format("{{{}}}", fields);
}

std::string json_case(std::string_view id, std::vector<LongRow> const& rows) {
    std::string fields;
    if (!id.empty()) add(fields, field("case", quoted(id)));
    for (std::string_view const state : {"present", "absent", "unsure"}) {
        auto const list = state_list(rows, state);
        if (list.empty()) continue;
        add(fields, field(state == "present" ? "findings" : state, fmt::format("[{}]", list)));
    }
    return fmt::format("{{{}}}", fields);
}

}  // namespace asterism::batch
