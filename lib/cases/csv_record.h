// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/diagnostic.h"
#include "base/source.h"
#include "yaml/node.h"

namespace asterism {

/// The columns of the wide form, one row a baby, in the order written. Lists are split by `|`; an
/// item is written as on the command line (`low-set ears; right`, `weight=2610 g`,
/// `all|except=hips`).
std::vector<std::string_view> const& csv_columns();
/// The columns of the long form, one row a finding; rows of a case stand together.
std::vector<std::string_view> const& csv_long_columns();
/// Whether a header is of the long form: it has a column `finding`.
bool is_csv_long_form(std::vector<std::string> const& header);

/// One row: the cells that are not empty, trimmed, each with its place where that is known. What a
/// row means is said here alone, for files read whole and for files too large for that.
struct CsvRecord {
    std::vector<std::pair<std::string_view, Word>> cells;

    /// The cell under a column; an empty word where there is none.
    Word cell(std::string_view column) const;
};

/// The case that a row of the wide form says, to be read by `read_case`.
yaml::Node csv_wide_case(CsvRecord const& record, Span whole);
/// The case that rows of the long form say.
yaml::Node csv_long_case(std::vector<CsvRecord> const& records, Span whole);
/// What is wrong with a row of the long form: its `state`, or no `case` though there is a column.
void check_csv_long(CsvRecord const& record, bool has_case_column, Span whole,
                    Diagnostics& diagnostics);
/// What to say of a case of the long form that comes again behind another.
std::string csv_rows_apart(std::string_view id);

}  // namespace asterism
