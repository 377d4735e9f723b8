// SPDX-License-Identifier: MIT
#include "cases/csv_record.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "base/nearest.h"
#include "base/number.h"
#include "cases/from_arguments.h"
#include "yaml/reader.h"

namespace asterism {

namespace {

using Entries = std::vector<yaml::Entry>;

/// What a column speaks of.
enum class Of : std::uint8_t {
    baby,      ///< in both forms
    findings,  ///< of the baby, in the wide form
    finding,   ///< of the row, in the long form
};

struct Column {
    std::string_view name;
    Of of;
};

constexpr std::array columns{
    Column{"case", Of::baby},        Column{"sex", Of::baby},
    Column{"gestation", Of::baby},   Column{"age", Of::baby},
    Column{"born", Of::baby},        Column{"examined-on", Of::baby},
    Column{"examined", Of::baby},    Column{"findings", Of::findings},
    Column{"absent", Of::findings},  Column{"unsure", Of::findings},
    Column{"finding", Of::finding},  Column{"state", Of::finding},
    Column{"side", Of::finding},     Column{"grade", Of::finding},
    Column{"familial", Of::finding}, Column{"measures", Of::baby},
    Column{"history", Of::baby},     Column{"referred", Of::baby},
    Column{"decided-on", Of::baby},
};

std::vector<std::string_view> columns_without(Of of) {
    std::vector<std::string_view> names;
    for (auto const& column : columns) {
        if (column.of != of) names.push_back(column.name);
    }
    return names;
}

bool speaks_of_finding(std::string_view name) {
    return std::any_of(columns.begin(), columns.end(), [&](Column const& column) {
        return column.name == name && column.of == Of::finding;
    });
}

template <class List>
bool holds(List const& list, std::string_view name) {
    return std::find(list.begin(), list.end(), name) != list.end();
}

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

/// What both forms say of the baby, but for its findings.
void add_baby(CsvRecord const& record, CsvForm const& form, Entries& entries) {
    for (auto const* column : {"case", "sex", "gestation", "age", "born", "examined-on"})
        add_text(record, column, entries);
    for (auto const* column : {"examined", "history"}) add_list(record, column, entries);
    add_measures(record, entries);
    add_decisions(record, entries);
    for (auto const& column : form.kept) add_text(record, column, entries);
}

yaml::Node long_statement(CsvRecord const& record) {
    auto const finding = record.cell("finding");
    Entries parts;
    for (auto const* column : {"finding", "side", "grade", "familial"})
        add_text(record, column, parts);
    return yaml::map(finding.span, std::move(parts));
}

std::string_view state_of(CsvRecord const& record) {
    static constexpr std::string_view present = "present";
    for (auto const& [column, written] : record.cells) {
        if (column == "state") return written.text;
    }
    return present;
}

/// Reads the names of a header's columns one by one.
class HeaderReader {
public:
    HeaderReader(bool is_long, CsvBeside const& beside, Diagnostics& diagnostics)
        : known_(is_long ? csv_long_columns() : csv_columns()),
          beside_(beside),
          diagnostics_(diagnostics) {
        form_.is_long = is_long;
    }

    void add(Word const& name) {
        bool const passed_over = name.text != "case" && holds(beside_.passed_over, name.text);
        if (!passed_over && !fine(name)) return;
        form_.columns.push_back(passed_over ? std::string() : name.text);
        if (!passed_over && !holds(known_, name.text)) form_.kept.push_back(name.text);
    }

    CsvForm take() { return std::move(form_); }

private:
    bool fine(Word const& name) {
        bool const is_case = holds(known_, name.text), is_kept = holds(beside_.kept, name.text);
        if (!is_case && !is_kept) return unknown(name);
        if (form_.has(name.text))
            return wrong(name, fmt::format("column `{}` is named twice", name.text));
        if (is_case && is_kept)
            return wrong(name, fmt::format("column `{}` speaks of the examination here, so it is "
                                           "no group",
                                           name.text));
        return true;
    }

    bool wrong(Word const& name, std::string message) {
        diagnostics_.error("bad-csv", name.span, std::move(message));
        return false;
    }

    bool unknown(Word const& name) {
        std::vector<std::string> names(known_.begin(), known_.end());
        names.insert(names.end(), beside_.kept.begin(), beside_.kept.end());
        auto help = did_you_mean(name.text, names);
        if (help.empty()) help = beside_.help;
        if (help.empty()) help = fmt::format("accepted: {}", fmt::join(names, ", "));
        diagnostics_.error("unknown-column", name.span,
                           fmt::format("unknown column `{}`", name.text), std::move(help));
        return false;
    }

    std::vector<std::string_view> const& known_;
    CsvBeside const& beside_;
    Diagnostics& diagnostics_;
    CsvForm form_;
};

/// A state that is none, or what speaks of a finding where there is none.
void check_finding(CsvRecord const& row, Diagnostics& diagnostics) {
    auto const state = row.cell("state");
    if (!state.empty() && !holds(states(), state.text))
        yaml::unknown_word(state, "state", states(), diagnostics);
    if (row.cells.empty() || !row.cell("finding").empty()) return;
    auto const& [column, cell] = row.cells.front();
    diagnostics.error("missing-finding", cell.span,
                      fmt::format("`{}` under `{}` speaks of a finding, and the row names none",
                                  cell.text, column));
}

}  // namespace

std::vector<std::string_view> const& csv_columns() {
    static auto const names = columns_without(Of::finding);
    return names;
}

std::vector<std::string_view> const& csv_long_columns() {
    static auto const names = columns_without(Of::findings);
    return names;
}

bool CsvForm::has(std::string_view column) const { return holds(columns, column); }

std::optional<CsvForm> read_csv_header(std::vector<Word> const& header, CsvBeside const& beside,
                                       Diagnostics& diagnostics) {
    bool const is_long = std::any_of(header.begin(), header.end(),
                                     [](Word const& name) { return name.text == "finding"; });
    Diagnostics problems;
    HeaderReader reader(is_long, beside, problems);
    for (auto const& name : header) reader.add(name);
    diagnostics.append(problems);
    return problems.has_errors() ? std::nullopt : std::optional(reader.take());
}

Word CsvRecord::cell(std::string_view column) const {
    auto const found = std::find_if(cells.begin(), cells.end(),
                                    [&](auto const& cell) { return cell.first == column; });
    return found == cells.end() ? Word() : found->second;
}

CsvRecord csv_record(CsvForm const& form, std::vector<std::string> const& cells,
                     std::function<Span(std::size_t)> const& place) {
    CsvRecord result;
    for (std::size_t i = 0; i < form.columns.size(); ++i) {
        auto const cell = trim(cells[i]);
        if (cell.empty() || form.columns[i].empty()) continue;
        result.cells.push_back({form.columns[i], {std::string(cell), place ? place(i) : Span()}});
    }
    return result;
}

yaml::Node csv_wide_case(CsvRecord const& record, CsvForm const& form, Span whole) {
    Entries entries;
    add_baby(record, form, entries);
    for (auto const* column : {"findings", "absent", "unsure"}) add_list(record, column, entries);
    return yaml::map(std::move(whole), std::move(entries));
}

void CsvLongCase::add(CsvRecord const& row, CsvForm const& form, Span const& whole,
                      Diagnostics& diagnostics) {
    ++rows_;
    bool const nameless = form.has("case") && row.cell("case").empty();
    CsvRecord finding;
    for (auto const& cell : row.cells) {
        if (speaks_of_finding(cell.first))
            finding.cells.push_back(cell);
        else if (!nameless)
            join(cell, diagnostics);
    }
    check_finding(finding, diagnostics);
    if (nameless)
        diagnostics.error("missing-case", whole,
                          "a row of one finding must name its case, or two babies may be joined");
    if (!finding.cell("finding").empty()) findings_.push_back(std::move(finding));
}

void CsvLongCase::join(std::pair<std::string_view, Word> const& cell, Diagnostics& diagnostics) {
    auto const& [column, word] = cell;
    auto const before = baby_.cell(column);
    if (before.empty()) return baby_.cells.push_back(cell);
    if (before.text == word.text) return;
    diagnostics.add({"rows-disagree",
                     Severity::error,
                     fmt::format("case `{}` has `{}` under `{}` here and `{}` in an earlier row",
                                 baby_.cell("case").text, word.text, column, before.text),
                     word.span,
                     {{before.span, "the earlier row"}},
                     "what is said of a baby stands on one row, or is the same on each"});
}

yaml::Node CsvLongCase::node(CsvForm const& form, Span whole) const {
    Entries entries;
    add_baby(baby_, form, entries);
    for (auto const& state : states()) {
        std::vector<yaml::Node> nodes;
        for (auto const& finding : findings_) {
            if (state_of(finding) == state) nodes.push_back(long_statement(finding));
        }
        if (nodes.empty()) continue;
        auto const span = nodes.front().span;
        entries.push_back(
            {{state == "present" ? "findings" : state, span}, yaml::list(span, std::move(nodes))});
    }
    return yaml::map(std::move(whole), std::move(entries));
}

std::string csv_quoted(std::string const& cell) {
    bool const needs = cell.find_first_of(",\"\r\n") != std::string::npos ||
                       cell.starts_with(' ') || cell.ends_with(' ');
    if (!needs) return cell;
    std::string text = "\"";
    for (auto const c : cell) text += c == '"' ? std::string("\"\"") : std::string(1, c);
    return text + "\"";
}

std::string csv_rows_apart(std::string_view id) {
    return "rows of case `" + std::string(id) +
           "` stand apart; the rows of a case must follow one another";
}

}  // namespace asterism
