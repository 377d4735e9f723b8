// SPDX-License-Identifier: MIT
#include "cases/csv_record.h"

#include <algorithm>

#include "cases/from_arguments.h"
#include "yaml/reader.h"

namespace asterism {

namespace {

using Entries = std::vector<yaml::Entry>;

std::vector<std::string> const& states() {
    static std::vector<std::string> const known{"present", "absent", "unsure"};
    return known;
}

void add_text(CsvRecord const& record, std::string_view column, Entries& entries) {
    auto const value = record.cell(column);
    if (!value.empty()) entries.push_back({{std::string(column), value.span}, yaml::scalar(value)});
}

std::vector<Word> items(CsvRecord const& record, std::string_view column) {
    auto const value = record.cell(column);
    auto words = value.empty() ? std::vector<Word>() : split_words(value, '|');
    std::erase_if(words, [](Word const& item) { return item.empty(); });
    return words;
}

void add_list(CsvRecord const& record, std::string_view column, Entries& entries) {
    std::vector<yaml::Node> nodes;
    for (auto const& item : items(record, column)) {
        if (column == "examined")
            examined_from_text(item, nodes);
        else
            nodes.push_back(statement_from_text(item));
    }
    if (nodes.empty()) return;
    auto const span = nodes.front().span;
    bool const none = column == "history" && nodes.size() == 1 && nodes.front().text == "none";
    entries.push_back(
        {{std::string(column), span}, none ? nodes.front() : yaml::list(span, std::move(nodes))});
}

void add_measures(CsvRecord const& record, Entries& entries) {
    Entries values;
    for (auto const& item : items(record, "measures")) values.push_back(measure_from_text(item));
    if (values.empty()) return;
    auto const span = values.front().key.span;
    entries.push_back({{"measures", span}, yaml::map(span, std::move(values))});
}

void add_decisions(CsvRecord const& record, Entries& entries) {
    std::vector<yaml::Node> services;
    for (auto const& item : items(record, "referred")) services.push_back(yaml::scalar(item));
    auto const on = record.cell("decided-on");
    if (services.empty() && on.empty()) return;
    auto const span = services.empty() ? on.span : services.front().span;
    bool const none = services.size() == 1 && services.front().text == "none";
    if (none) services.clear();
    Entries parts;
    parts.push_back({{"referred", span}, yaml::list(span, std::move(services))});
    if (!on.empty()) parts.push_back({{"on", on.span}, yaml::scalar(on)});
    entries.push_back({{"decisions", span}, yaml::map(span, std::move(parts))});
}

yaml::Node long_statement(CsvRecord const& record, Word const& finding) {
    Entries parts{{{"finding", finding.span}, yaml::scalar(finding)}};
    add_text(record, "side", parts);
    add_text(record, "familial", parts);
    return yaml::map(finding.span, std::move(parts));
}

}  // namespace

std::vector<std::string_view> const& csv_columns() {
    static std::vector<std::string_view> const columns{
        "case",     "sex",    "gestation", "age",      "born",    "examined-on", "examined",
        "findings", "absent", "unsure",    "measures", "history", "referred",    "decided-on"};
    return columns;
}

std::vector<std::string_view> const& csv_long_columns() {
    static std::vector<std::string_view> const columns{"case", "finding", "state", "side",
                                                       "familial"};
    return columns;
}

bool is_csv_long_form(std::vector<std::string> const& header) {
    return std::find(header.begin(), header.end(), "finding") != header.end();
}

Word CsvRecord::cell(std::string_view column) const {
    auto const found = std::find_if(cells.begin(), cells.end(),
                                    [&](auto const& cell) { return cell.first == column; });
    return found == cells.end() ? Word() : found->second;
}

yaml::Node csv_wide_case(CsvRecord const& record, Span whole) {
    Entries entries;
    for (auto const* column : {"case", "sex", "gestation", "age", "born", "examined-on"})
        add_text(record, column, entries);
    for (auto const* column : {"examined", "findings", "absent", "unsure", "history"})
        add_list(record, column, entries);
    add_measures(record, entries);
    add_decisions(record, entries);
    return yaml::map(std::move(whole), std::move(entries));
}

yaml::Node csv_long_case(std::vector<CsvRecord> const& records, Span whole) {
    Entries entries;
    add_text(records.front(), "case", entries);
    for (auto const& state : states()) {
        std::vector<yaml::Node> nodes;
        for (auto const& record : records) {
            auto const written = record.cell("state");
            auto const finding = record.cell("finding");
            if (!finding.empty() && (written.empty() ? "present" : written.text) == state)
                nodes.push_back(long_statement(record, finding));
        }
        if (nodes.empty()) continue;
        auto const span = nodes.front().span;
        entries.push_back(
            {{state == "present" ? "findings" : state, span}, yaml::list(span, std::move(nodes))});
    }
    return yaml::map(std::move(whole), std::move(entries));
}

void check_csv_long(CsvRecord const& record, bool has_case_column, Span whole,
                    Diagnostics& diagnostics) {
    auto const state = record.cell("state");
    bool const known = std::find(states().begin(), states().end(), state.text) != states().end();
    if (!state.empty() && !known) yaml::unknown_word(state, "state", states(), diagnostics);
    if (has_case_column && record.cell("case").empty())
        diagnostics.error("missing-case", std::move(whole),
                          "a row of one finding must name its case, or two babies may be joined");
}

std::string csv_rows_apart(std::string_view id) {
    return "rows of case `" + std::string(id) +
           "` stand apart; the rows of a case must follow one another";
}

}  // namespace asterism
