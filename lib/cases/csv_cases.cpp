// SPDX-License-Identifier: MIT
#include "cases/csv_cases.h"

#include <algorithm>
#include <unordered_set>

#include <fmt/format.h>

#include "base/number.h"
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
        bool const long_form = is_csv_long_form(table_.header);
        if (!known_columns(long_form ? csv_long_columns() : csv_columns())) return {};
        std::vector<ImportedCase> cases;
        for (auto row = table_.rows.begin(); row != table_.rows.end();) {
            auto const node = long_form ? long_case(row) : wide_case(row);
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
            auto const found = std::find(known.begin(), known.end(), column);
            if (found != known.end()) {
                known_.push_back(*found);
                continue;
            }
            yaml::unknown_word({column, cell_span(source_, 1, i)}, "column", names, diagnostics_);
            fine = false;
        }
        return fine;
    }

    yaml::Node wide_case(RowAt& row) const {
        auto const& this_row = *row++;
        return csv_wide_case(record(this_row), cell_span(source_, this_row.line, 0));
    }

    CsvRecord record(Row const& row) const {
        CsvRecord result;
        for (std::size_t i = 0; i < known_.size(); ++i) {
            auto const cell = trim(row.cells[i]);
            if (cell.empty()) continue;
            result.cells.push_back(
                {known_[i], {std::string(cell), cell_span(source_, row.line, i)}});
        }
        return result;
    }

    /// The rows from `row` on that are of one case; `row` then stands behind them.
    yaml::Node long_case(RowAt& row) {
        auto const whole = cell_span(source_, row->line, 0);
        std::vector<CsvRecord> rows;
        for (; row != table_.rows.end(); ++row) {
            auto next = record(*row);
            if (!rows.empty() && next.cell("case").text != rows.front().cell("case").text) break;
            check_csv_long(next, table_.column("case").has_value(),
                           cell_span(source_, row->line, 0), diagnostics_);
            rows.push_back(std::move(next));
        }
        if (auto const id = rows.front().cell("case"); !id.empty() && !seen_.insert(id.text).second)
            diagnostics_.error("rows-apart", id.span, csv_rows_apart(id.text));
        return csv_long_case(rows, whole);
    }

    SourcePtr const& source_;
    Table const& table_;
    ImportContext const& context_;
    Diagnostics& diagnostics_;
    std::vector<std::string_view> known_;   ///< the columns, as they stand in the file
    std::unordered_set<std::string> seen_;  ///< cases of the long form
};

}  // namespace

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
