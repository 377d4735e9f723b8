// SPDX-License-Identifier: MIT
#include "cases/csv_cases.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/number.h"
#include "cases/from_arguments.h"
#include "cases/read_case.h"
#include "norms/table.h"
#include "yaml/reader.h"
#include "yaml/text_checks.h"

namespace asterism {

namespace {

using norms::Row;
using norms::Table;

/// The tokenizer gives lines, not columns; a cell that stands on one line is found again by its
/// commas.
Span cell_span(SourcePtr const& source, int line, std::size_t index) {
    auto const number = static_cast<std::uint32_t>(line);
    auto const text = source->line(number);
    auto const start = source->line_start(number - 1);
    std::size_t begin = 0, cell = 0;
    bool quoted = false;
    for (std::size_t at = 0; at <= text.size(); ++at) {
        if (at < text.size() && text[at] == '"') quoted = !quoted;
        if (at < text.size() && (text[at] != ',' || quoted)) continue;
        if (cell++ == index) {
            if (begin < at && text[begin] == '"') ++begin;
            return {source, start + static_cast<std::uint32_t>(begin),
                    start + static_cast<std::uint32_t>(at)};
        }
        begin = at + 1;
    }
    return {source, start, start + static_cast<std::uint32_t>(text.size())};
}

class CsvReader {
public:
    CsvReader(SourcePtr const& source, Table const& table, ImportContext const& context,
              Diagnostics& diagnostics)
        : source_(source), table_(table), context_(context), diagnostics_(diagnostics) {}

    std::vector<ImportedCase> read() {
        bool const long_form = table_.column("finding").has_value();
        if (!known_columns(long_form ? csv_long_columns() : csv_columns())) return {};
        std::vector<ImportedCase> cases;
        for (auto row = table_.rows.begin(); row != table_.rows.end();) {
            auto const first = row++;
            while (long_form && row != table_.rows.end() &&
                   text(*row, "case") == text(*first, "case"))
                ++row;
            auto const node = long_form ? long_case(first, row) : wide_case(*first);
            ImportedCase result;
            result.baby = read_case(node, context_.ontology, diagnostics_);
            cases.push_back(std::move(result));
        }
        return cases;
    }

private:
    using RowAt = std::vector<Row>::const_iterator;

    bool known_columns(std::vector<std::string_view> const& known) {
        std::vector<std::string> const names(known.begin(), known.end());
        bool fine = true;
        for (std::size_t i = 0; i < table_.header.size(); ++i) {
            auto const& column = table_.header[i];
            if (std::find(names.begin(), names.end(), column) != names.end()) continue;
            yaml::unknown_word({column, cell_span(source_, 1, i)}, "column", names, diagnostics_);
            fine = false;
        }
        return fine;
    }

    std::string text(Row const& row, std::string_view column) const {
        auto const index = table_.column(column);
        return index ? std::string(trim(row.cells[*index])) : std::string();
    }

    Word word(Row const& row, std::string_view column) const {
        auto const index = table_.column(column);
        if (!index) return {};
        return {text(row, column), cell_span(source_, row.line, *index)};
    }

    void add_text(Row const& row, std::string_view column,
                  std::vector<yaml::Entry>& entries) const {
        auto const value = word(row, column);
        if (!value.empty())
            entries.push_back({{std::string(column), value.span}, yaml::scalar(value)});
    }

    std::vector<Word> items(Row const& row, std::string_view column) const {
        auto const value = word(row, column);
        auto words = value.empty() ? std::vector<Word>() : split_words(value, '|');
        std::erase_if(words, [](Word const& item) { return item.empty(); });
        return words;
    }

    void add_list(Row const& row, std::string_view column,
                  std::vector<yaml::Entry>& entries) const {
        std::vector<yaml::Node> nodes;
        for (auto const& item : items(row, column)) {
            if (column == "examined")
                examined_from_text(item, nodes);
            else
                nodes.push_back(statement_from_text(item));
        }
        if (nodes.empty()) return;
        auto const span = nodes.front().span;
        bool const none = column == "history" && nodes.size() == 1 && nodes.front().text == "none";
        entries.push_back({{std::string(column), span},
                           none ? nodes.front() : yaml::list(span, std::move(nodes))});
    }

    void add_measures(Row const& row, std::vector<yaml::Entry>& entries) const {
        std::vector<yaml::Entry> values;
        for (auto const& item : items(row, "measures")) values.push_back(measure_from_text(item));
        if (values.empty()) return;
        auto const span = values.front().key.span;
        entries.push_back({{"measures", span}, yaml::map(span, std::move(values))});
    }

    void add_decisions(Row const& row, std::vector<yaml::Entry>& entries) const {
        std::vector<yaml::Entry> parts;
        std::vector<yaml::Node> services;
        for (auto const& item : items(row, "referred")) services.push_back(yaml::scalar(item));
        auto const on = word(row, "decided-on");
        if (services.empty() && on.empty()) return;
        auto const span = services.empty() ? on.span : services.front().span;
        if (!services.empty() && services.front().text == "none") services.clear();
        parts.push_back({{"referred", span}, yaml::list(span, std::move(services))});
        if (!on.empty()) parts.push_back({{"on", on.span}, yaml::scalar(on)});
        entries.push_back({{"decisions", span}, yaml::map(span, std::move(parts))});
    }

    yaml::Node wide_case(Row const& row) const {
        std::vector<yaml::Entry> entries;
        for (auto const* column : {"case", "sex", "gestation", "age", "born", "examined-on"})
            add_text(row, column, entries);
        for (auto const* column : {"examined", "findings", "absent", "unsure", "history"})
            add_list(row, column, entries);
        add_measures(row, entries);
        add_decisions(row, entries);
        return yaml::map(cell_span(source_, row.line, 0), std::move(entries));
    }

    yaml::Node long_statement(Row const& row, Word const& finding) const {
        std::vector<yaml::Entry> parts{{{"finding", finding.span}, yaml::scalar(finding)}};
        add_text(row, "side", parts);
        add_text(row, "familial", parts);
        return yaml::map(finding.span, std::move(parts));
    }

    yaml::Node long_case(RowAt first, RowAt last) {
        std::vector<yaml::Entry> entries;
        add_text(*first, "case", entries);
        for (auto const* state : {"present", "absent", "unsure"}) {
            std::vector<yaml::Node> nodes;
            for (auto row = first; row != last; ++row) {
                auto const written = text(*row, "state");
                auto const finding = word(*row, "finding");
                if (!finding.empty() && (written.empty() ? "present" : written) == state)
                    nodes.push_back(long_statement(*row, finding));
            }
            auto const* key = std::string_view(state) == "present" ? "findings" : state;
            if (nodes.empty()) continue;
            auto const span = nodes.front().span;
            entries.push_back({{key, span}, yaml::list(span, std::move(nodes))});
        }
        for (auto row = first; row != last; ++row) check_state(*row);
        return yaml::map(cell_span(source_, first->line, 0), std::move(entries));
    }

    void check_state(Row const& row) {
        static std::vector<std::string> const states{"present", "absent", "unsure"};
        auto const state = word(row, "state");
        bool const known = std::find(states.begin(), states.end(), state.text) != states.end();
        if (!state.empty() && !known) yaml::unknown_word(state, "state", states, diagnostics_);
    }

    SourcePtr const& source_;
    Table const& table_;
    ImportContext const& context_;
    Diagnostics& diagnostics_;
};

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

std::vector<ImportedCase> read_csv_cases(SourcePtr const& source, ImportContext const& context,
                                         Diagnostics& diagnostics) {
    if (!yaml::check_text(source, diagnostics)) return {};
    auto const table = norms::parse_table(source->text());
    if (table) return CsvReader(source, *table, context, diagnostics).read();
    for (auto const& problem : table.error()) {
        auto const begin = source->line_start(static_cast<std::uint32_t>(problem.line - 1));
        diagnostics.error("bad-csv", {source, begin, begin + 1}, problem.message);
    }
    return {};
}

}  // namespace asterism
