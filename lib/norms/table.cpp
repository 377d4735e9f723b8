// SPDX-License-Identifier: MIT
#include "norms/table.h"

#include <algorithm>
#include <new>

#include <csv.h>

namespace asterism::norms {
namespace {

/// What the C callbacks write to. An exception must not cross them, so running out of memory is
/// only noted.
struct Sink {
    int line = 0;
    std::vector<std::string> cells;
    std::vector<Row> rows;
    bool out_of_memory = false;
};

void end_of_cell(void* text, std::size_t size, void* data) {
    auto& sink = *static_cast<Sink*>(data);
    try {
        sink.cells.emplace_back(static_cast<char const*>(text), size);
    } catch (std::bad_alloc const&) {
        sink.out_of_memory = true;
    }
}

void end_of_row(int /*terminator*/, void* data) {
    auto& sink = *static_cast<Sink*>(data);
    try {
        sink.rows.push_back({sink.line, std::move(sink.cells)});
    } catch (std::bad_alloc const&) {
        sink.out_of_memory = true;
    }
    sink.cells.clear();
}

/// Owns the parser of the C library. It reports no places, so it is fed line by line and the line
/// is kept here.
class Parser {
public:
    Parser() {
        if (csv_init(&parser_, CSV_STRICT | CSV_STRICT_FINI) != 0) throw std::bad_alloc();
    }
    ~Parser() { csv_free(&parser_); }
    Parser(Parser const&) = delete;
    Parser& operator=(Parser const&) = delete;

    /// Feeds one line without its end; false when its quoting is broken.
    bool feed(std::string_view line) {
        ++sink.line;
        auto const fed =
            csv_parse(&parser_, line.data(), line.size(), end_of_cell, end_of_row, &sink);
        return fed == line.size() &&
               csv_parse(&parser_, "\n", 1, end_of_cell, end_of_row, &sink) == 1;
    }
    /// Ends the text; false when a quoted cell is still open.
    bool finish() { return csv_fini(&parser_, end_of_cell, end_of_row, &sink) == 0; }

    Sink sink;

private:
    csv_parser parser_{};
};

std::string_view without_byte_order_mark(std::string_view text) {
    return text.starts_with("\xEF\xBB\xBF") ? text.substr(3) : text;
}

/// Takes the first line off `rest`: up to LF, CRLF or a lone CR.
std::string_view take_line(std::string_view& rest) {
    auto const end = std::min(rest.find_first_of("\r\n"), rest.size());
    auto const line = rest.substr(0, end);
    rest.remove_prefix(end);
    if (rest.starts_with("\r\n")) rest.remove_prefix(1);
    if (!rest.empty()) rest.remove_prefix(1);
    return line;
}

tl::expected<std::vector<Row>, TableErrors> rows_of(std::string_view text) {
    Parser parser;
    auto rest = without_byte_order_mark(text);
    while (!rest.empty()) {
        if (!parser.feed(take_line(rest))) {
            return tl::make_unexpected(
                TableErrors{{parser.sink.line, "a quote inside a cell is not doubled"}});
        }
    }
    if (!parser.finish()) {
        return tl::make_unexpected(TableErrors{{parser.sink.line, "a quoted cell is not closed"}});
    }
    if (parser.sink.out_of_memory) throw std::bad_alloc();
    return std::move(parser.sink.rows);
}

void check_header(Row const& header, TableErrors& errors) {
    for (auto cell = header.cells.begin(); cell != header.cells.end(); ++cell) {
        if (std::find(header.cells.begin(), cell, *cell) != cell) {
            errors.push_back({header.line, "column `" + *cell + "` is named twice"});
        }
    }
}

void check_lengths(std::vector<Row> const& rows, TableErrors& errors) {
    auto const expected = rows.front().cells.size();
    for (auto const& row : rows) {
        if (row.cells.size() != expected) {
            errors.push_back({row.line, "expected " + std::to_string(expected) +
                                            " cells as in the header, found " +
                                            std::to_string(row.cells.size())});
        }
    }
}

}  // namespace

std::optional<std::size_t> Table::column(std::string_view name) const {
    auto const found = std::ranges::find(header, name);
    if (found == header.end()) return std::nullopt;
    return static_cast<std::size_t>(found - header.begin());
}

tl::expected<Table, TableErrors> parse_table(std::string_view text) {
    auto rows = rows_of(text);
    if (!rows) return tl::make_unexpected(rows.error());
    if (rows->size() < 2) return tl::make_unexpected(TableErrors{{1, "the table has no rows"}});
    TableErrors errors;
    check_header(rows->front(), errors);
    check_lengths(*rows, errors);
    if (!errors.empty()) return tl::make_unexpected(std::move(errors));
    Table table{std::move(rows->front().cells), {}};
    table.rows.assign(std::make_move_iterator(rows->begin() + 1),
                      std::make_move_iterator(rows->end()));
    return table;
}

}  // namespace asterism::norms
