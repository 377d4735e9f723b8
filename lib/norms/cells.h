// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "norms/sex.h"
#include "norms/table.h"

namespace asterism::norms {

/// Reads the cells of a table by column name and gathers what is wrong with them. A cell that
/// cannot be read gives a harmless value and an error; reading goes on, so that one run reports
/// everything.
class Cells {
public:
    /// Notes an error for each of `columns` that the table lacks. Columns that nobody asks for are
    /// allowed: the tables also carry the day as it is printed ("37+3").
    Cells(Table const& table, std::vector<std::string_view> const& columns);

    /// True when all columns are there. Cells may be read only then.
    [[nodiscard]] bool complete() const { return errors_.empty(); }

    [[nodiscard]] std::string const& text(Row const& row, std::string_view column) const;
    /// A finite decimal number.
    double number(Row const& row, std::string_view column);
    /// A finite decimal number above 0.
    double positive(Row const& row, std::string_view column);
    /// A whole number, 0 or more.
    int whole(Row const& row, std::string_view column);
    /// `female` or `male`.
    Sex sex(Row const& row, std::string_view column);
    /// A measure id; the tables write `head_circumference` where the ontology has
    /// `head-circumference`.
    [[nodiscard]] std::string measure(Row const& row, std::string_view column) const;

    void error(Row const& row, std::string message);
    [[nodiscard]] TableErrors const& errors() const { return errors_; }

private:
    void unreadable(Row const& row, std::string_view column, std::string_view expected);

    Table const& table_;
    TableErrors errors_;
};

/// A whole cell as a finite decimal number, or nothing: no blanks, no leading plus, no infinity.
[[nodiscard]] std::optional<double> parse_number(std::string_view text);

}  // namespace asterism::norms
