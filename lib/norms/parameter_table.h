// SPDX-License-Identifier: MIT
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "norms/days.h"
#include "norms/lms.h"
#include "norms/sex.h"
#include "norms/skew_t.h"
#include "norms/table.h"
#include "norms/very_preterm.h"

namespace asterism::norms {

/// One row of parameters: of a measure, for a sex, at a whole day or completed week.
template <class Parameters>
struct ParameterRow {
    std::string measure{};
    Sex sex = Sex::female;
    int key = 0;
    Parameters parameters{};
    int line = 1;
};

/// The parameters of one published reference. Rows are looked up, never interpolated and never
/// extended.
template <class Parameters>
class ParameterTable {
public:
    using Rows = std::vector<ParameterRow<Parameters>>;

    /// The empty table.
    ParameterTable() = default;
    /// `rows` in any order, each measure, sex and key once; `units` of the measures.
    ParameterTable(Rows rows, std::map<std::string, std::string> units);

    [[nodiscard]] Parameters const* find(std::string_view measure, Sex sex, int key) const;
    /// First and last key of a measure and sex; nothing when the table has none.
    [[nodiscard]] std::optional<DayRange> keys(std::string_view measure, Sex sex) const;
    /// Unit of a measure; null when the table does not have it.
    [[nodiscard]] std::string const* unit(std::string_view measure) const;
    [[nodiscard]] Rows const& rows() const { return rows_; }
    [[nodiscard]] std::map<std::string, std::string> const& units() const { return units_; }

private:
    Rows rows_;
    std::map<std::string, std::string> units_;
};

using LmsTable = ParameterTable<Lms>;
using SkewTTable = ParameterTable<SkewT>;

/// Reads `measurement,unit,sex,<key>,L,M,S`, where `key` names the column of whole days or
/// completed weeks. Errors: a missing column, a number that is none, M or S not above 0, a row
/// twice, two units for one measure.
[[nodiscard]] tl::expected<LmsTable, TableErrors> read_lms_table(std::string_view text,
                                                                 std::string_view key);

/// Reads `measurement,unit,sex,ga_days,mu,sigma,nu,tau`; errors as above, sigma, nu and tau must be
/// above 0.
[[nodiscard]] tl::expected<SkewTTable, TableErrors> read_skew_t_table(std::string_view text);

/// Reads the equations of the very preterm reference:
/// `measurement,unit,transform_of_y,intercept,ga_term,ga_coef,
/// male_coef,variance,ga_days_min,ga_days_max`.
[[nodiscard]] tl::expected<std::vector<VeryPreterm>, TableErrors> read_very_preterm_table(
    std::string_view text);

extern template class ParameterTable<Lms>;
extern template class ParameterTable<SkewT>;

}  // namespace asterism::norms
