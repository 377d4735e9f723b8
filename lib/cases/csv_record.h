// SPDX-License-Identifier: MIT
#pragma once

#include <functional>
#include <optional>
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
/// The columns of the long form, one row a finding; rows of a case stand together. `finding`,
/// `state`, `side`, `grade` and `familial` speak of the row's finding. The others are those of the
/// wide form and speak of the baby: a cell may stand on one row of the baby or on several, and must
/// then be the same. A row without a finding is there for what it says of the baby.
std::vector<std::string_view> const& csv_long_columns();

/// Columns that a file has beside those of a case.
struct CsvBeside {
    std::vector<std::string> kept{};         ///< speak of the baby, kept as texts under their names
    std::vector<std::string> passed_over{};  ///< not read, whatever they hold; never `case`
    std::string help{};  ///< what to do about an unknown column that is near no known one
};

/// What the columns of a file mean. Told from the header: a column `finding` makes the long form.
struct CsvForm {
    bool is_long = false;
    std::vector<std::string> columns;  ///< as they stand in the file; empty: passed over
    std::vector<std::string> kept;     ///< those of them that are no columns of a case

    bool has(std::string_view column) const;
};

/// Columns may be left out and stand in any order. Errors, all of them, each at its column:
/// `unknown-column` with the nearest name, `bad-csv` for a name that stands twice or would be kept
/// though the form has a meaning for it.
std::optional<CsvForm> read_csv_header(std::vector<Word> const& header, CsvBeside const& beside,
                                       Diagnostics& diagnostics);

/// One row: the cells that are not empty, trimmed, each with its place where that is known. What a
/// row means is said here alone, for files read whole and for files too large for that.
struct CsvRecord {
    std::vector<std::pair<std::string_view, Word>> cells;

    /// The cell under a column; an empty word where there is none.
    Word cell(std::string_view column) const;
};

/// A row under the columns of `form`, which must outlive it; `place` gives a cell's place.
CsvRecord csv_record(CsvForm const& form, std::vector<std::string> const& cells,
                     std::function<Span(std::size_t)> const& place = {});

/// The case that a row of the wide form says, to be read by `read_case`.
yaml::Node csv_wide_case(CsvRecord const& record, CsvForm const& form, Span whole);

/// The rows of one case of the long form.
class CsvLongCase {
public:
    /// Takes the next row. Reported: a `state` that is none, a side or the like without a finding,
    /// no `case` though there is a column, and what contradicts an earlier row (`rows-disagree`).
    void add(CsvRecord const& row, CsvForm const& form, Span const& whole,
             Diagnostics& diagnostics);
    /// The case that the rows say.
    yaml::Node node(CsvForm const& form, Span whole) const;
    bool empty() const { return rows_ == 0; }
    /// Gives the findings up: a case that will not be read any more need not be kept.
    void drop_findings() { findings_.clear(); }

private:
    void join(std::pair<std::string_view, Word> const& cell, Diagnostics& diagnostics);

    std::size_t rows_ = 0;
    CsvRecord baby_;                   ///< what the rows say of the baby
    std::vector<CsvRecord> findings_;  ///< what each row says of its finding
};

/// A cell as it stands in a file: in quotes where it must be.
std::string csv_quoted(std::string const& cell);

/// What to say of a case of the long form that comes again behind another.
std::string csv_rows_apart(std::string_view id);

}  // namespace asterism
