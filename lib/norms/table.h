// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <tl/expected.hpp>

namespace asterism::norms {

/// Something wrong in the text of a table. Line 1 is the header; the wording is that of a
/// diagnostic.
struct TableError {
    int line = 1;
    std::string message{};

    friend bool operator==(TableError const&, TableError const&) = default;
};

/// All errors of one text, in the order of their lines.
using TableErrors = std::vector<TableError>;

/// One row of text cells and the line it ended on.
struct Row {
    int line = 1;
    std::vector<std::string> cells{};
};

/// A comma-separated table (RFC 4180, one header row, no comments); every row has as many cells as
/// the header.
struct Table {
    std::vector<std::string> header{};
    std::vector<Row> rows{};

    /// The place of a column, or nothing.
    [[nodiscard]] std::optional<std::size_t> column(std::string_view name) const;
};

/// Reads a table. Blank lines are passed over, line ends may be LF, CRLF or CR, a byte order mark
/// is ignored. Errors: quoting that RFC 4180 does not allow, a row of another length, a column
/// named twice, no rows.
[[nodiscard]] tl::expected<Table, TableErrors> parse_table(std::string_view text);

}  // namespace asterism::norms
