// SPDX-License-Identifier: MIT
#include "norms/cells.h"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace asterism::norms {
namespace {

std::string quoted(std::string_view text) { return "`" + std::string(text) + "`"; }

std::string listed(std::vector<std::string> const& names) {
    std::string text;
    for (auto const& name : names) text += (text.empty() ? "" : ", ") + quoted(name);
    return text;
}

}  // namespace

std::optional<double> parse_number(std::string_view text) {
    double value = 0;
    auto const* end = text.data() + text.size();
    auto const read = std::from_chars(text.data(), end, value);
    if (read.ec != std::errc{} || read.ptr != end || !std::isfinite(value)) return std::nullopt;
    return value;
}

Cells::Cells(Table const& table, std::vector<std::string_view> const& columns) : table_(table) {
    for (auto const& column : columns) {
        if (table.column(column)) continue;
        errors_.push_back({1, "column " + quoted(column) + " is missing; the header has " +
                                  listed(table.header)});
    }
}

std::string const& Cells::text(Row const& row, std::string_view column) const {
    return row.cells.at(table_.column(column).value());
}

double Cells::number(Row const& row, std::string_view column) {
    auto const value = parse_number(text(row, column));
    if (!value) unreadable(row, column, "a number");
    return value.value_or(1);
}

double Cells::positive(Row const& row, std::string_view column) {
    auto const value = parse_number(text(row, column));
    if (value && *value > 0) return *value;
    unreadable(row, column, "a number above 0");
    return 1;
}

int Cells::whole(Row const& row, std::string_view column) {
    auto const& cell = text(row, column);
    int value = 0;
    auto const* end = cell.data() + cell.size();
    auto const read = std::from_chars(cell.data(), end, value);
    if (read.ec == std::errc{} && read.ptr == end && value >= 0) return value;
    unreadable(row, column, "a whole number");
    return 0;
}

Sex Cells::sex(Row const& row, std::string_view column) {
    auto const& cell = text(row, column);
    if (cell == "male") return Sex::male;
    if (cell != "female") unreadable(row, column, "`female` or `male`");
    return Sex::female;
}

std::string Cells::measure(Row const& row, std::string_view column) const {
    auto id = text(row, column);
    std::ranges::replace(id, '_', '-');
    return id;
}

void Cells::error(Row const& row, std::string message) {
    errors_.push_back({row.line, std::move(message)});
}

void Cells::unreadable(Row const& row, std::string_view column, std::string_view expected) {
    error(row, "expected " + std::string(expected) + " in column " + quoted(column) + ", found " +
                   quoted(text(row, column)));
}

}  // namespace asterism::norms
