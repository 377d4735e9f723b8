// SPDX-License-Identifier: MIT
#include "cases/csv_cases.h"

#include <numeric>
#include <unordered_set>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "cases/read_case.h"
#include "norms/table.h"
#include "yaml/text_checks.h"

namespace asterism {

namespace {

using norms::Row;
using norms::Table;

class CsvReader {
public:
    /// `lines_before`: lines of the table, as it was cut into cells, that the source lacks.
    CsvReader(SourcePtr const& source, CsvForm const& form, std::uint32_t lines_before,
              ImportContext const& context, Diagnostics& diagnostics)
        : source_(source),
          form_(form),
          lines_before_(lines_before),
          context_(context),
          diagnostics_(diagnostics) {}

    std::vector<ImportedCase> read(std::vector<Row> const& rows) {
        std::vector<ImportedCase> cases;
        for (auto row = rows.begin(); row != rows.end();) {
            auto const node = form_.is_long ? long_case(row, rows.end()) : wide_case(row);
            ImportedCase result;
            result.baby = read_case(node, context_.ontology, diagnostics_);
            cases.push_back(std::move(result));
        }
        return cases;
    }

private:
    using RowAt = std::vector<Row>::const_iterator;

    Span place(Row const& row, std::size_t cell) const {
        auto const line = static_cast<std::uint32_t>(row.line) - lines_before_;
        return csv_cell_span(source_, source_->first_line() + line - 1, cell);
    }

    CsvRecord record(Row const& row) const {
        return csv_record(form_, row.cells, [&](std::size_t cell) { return place(row, cell); });
    }

    yaml::Node wide_case(RowAt& row) const {
        auto const& this_row = *row++;
        return csv_wide_case(record(this_row), form_, place(this_row, 0));
    }

    /// The rows from `row` on that are of one case; `row` then stands behind them.
    yaml::Node long_case(RowAt& row, RowAt end) {
        auto const whole = place(*row, 0);
        auto const id = record(*row).cell("case");
        CsvLongCase gathered;
        for (; row != end; ++row) {
            auto const next = record(*row);
            if (next.cell("case").text != id.text) break;
            gathered.add(next, form_, place(*row, 0), diagnostics_);
        }
        if (!id.empty() && !seen_.insert(id.text).second)
            diagnostics_.error("rows-apart", id.span, csv_rows_apart(id.text));
        return gathered.node(form_, whole);
    }

    SourcePtr const& source_;
    CsvForm const& form_;
    std::uint32_t lines_before_;
    ImportContext const& context_;
    Diagnostics& diagnostics_;
    std::unordered_set<std::string> seen_;  ///< cases of the long form
};

/// The table, or its problems at their lines.
std::optional<Table> table_of(SourcePtr const& source, std::string_view text,
                              Diagnostics& diagnostics) {
    auto table = norms::parse_table(text);
    if (table) return std::move(*table);
    for (auto const& problem : table.error()) {
        auto const begin = source->line_start(static_cast<std::uint32_t>(problem.line - 1));
        diagnostics.error("bad-csv", {source, begin, begin + 1}, problem.message);
    }
    return std::nullopt;
}

}  // namespace

/// The tokenizer gives lines, not columns; a cell that stands on one line is found again by its
/// commas.
Span csv_cell_span(SourcePtr const& source, std::uint32_t line, std::size_t index) {
    auto const text = source->line(line);
    auto const start = source->line_start(line - source->first_line());
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

std::vector<Word> csv_header_words(SourcePtr const& source, std::vector<std::string> const& cells) {
    std::vector<Word> words;
    for (std::size_t i = 0; i < cells.size(); ++i)
        words.push_back({cells[i], csv_cell_span(source, source->first_line(), i)});
    return words;
}

std::vector<ImportedCase> read_csv_cases(SourcePtr const& source, ImportContext const& context,
                                         Diagnostics& diagnostics) {
    if (!yaml::check_text(source, diagnostics)) return {};
    auto const table = table_of(source, source->text(), diagnostics);
    if (!table) return {};
    auto const form = read_csv_header(csv_header_words(source, table->header), {}, diagnostics);
    if (!form) return {};
    return CsvReader(source, *form, 0, context, diagnostics).read(table->rows);
}

std::vector<ImportedCase> read_csv_rows(SourcePtr const& rows, CsvForm const& form,
                                        ImportContext const& context, Diagnostics& diagnostics) {
    // Whatever the columns are called: a header that no name can break stands in for the file's.
    std::vector<std::size_t> numbers(form.columns.size());
    std::iota(numbers.begin(), numbers.end(), std::size_t{0});
    auto const text = fmt::format("{}\n{}", fmt::join(numbers, ","), rows->text());
    auto const table = table_of(rows, text, diagnostics);
    if (!table) return {};
    auto known = form;
    known.kept.clear();  // they are no keys of a case
    return CsvReader(rows, known, 1, context, diagnostics).read(table->rows);
}

}  // namespace asterism
