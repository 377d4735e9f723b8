// SPDX-License-Identifier: MIT
#include "norms/parameter_table.h"

#include <algorithm>
#include <functional>
#include <tuple>

#include "norms/cells.h"

namespace asterism::norms {
namespace {

template <class Parameters>
auto place(ParameterRow<Parameters> const& row) {
    return std::tuple<std::string_view, Sex, int>(row.measure, row.sex, row.key);
}

using Units = std::map<std::string, std::string>;

/// Notes the unit of a row's measure; one measure has one unit throughout.
void note_unit(Cells& cells, Row const& row, std::string const& measure, Units& units) {
    auto const& unit = cells.text(row, "unit");
    auto const [known, fresh] = units.try_emplace(measure, unit);
    if (!fresh && known->second != unit) {
        cells.error(row, "`" + measure + "` is in `" + unit + "` here and in `" + known->second +
                             "` above");
    }
}

template <class Parameters>
void check_repeats(std::vector<ParameterRow<Parameters>> rows, TableErrors& errors) {
    std::ranges::stable_sort(rows, {}, place<Parameters>);
    auto const* before = rows.data();
    for (auto const& row : rows) {
        if (&row != before && place(row) == place(*before)) {
            errors.push_back({row.line, "this row repeats line " + std::to_string(before->line)});
        } else {
            before = &row;
        }
    }
}

template <class Parameters>
using ReadParameters = std::function<Parameters(Cells&, Row const&)>;

/// Reads any table of this shape: what identifies a row, its unit, and the parameters by `read`.
template <class Parameters>
tl::expected<ParameterTable<Parameters>, TableErrors> read_parameters(
    std::string_view text, std::string_view key, std::vector<std::string_view> columns,
    ReadParameters<Parameters> const& read) {
    auto const table = parse_table(text);
    if (!table) return tl::make_unexpected(table.error());
    columns.insert(columns.begin(), {"measurement", "unit", "sex", key});
    Cells cells(*table, columns);
    if (!cells.complete()) return tl::make_unexpected(cells.errors());

    std::vector<ParameterRow<Parameters>> rows;
    Units units;
    for (auto const& row : table->rows) {
        auto measure = cells.measure(row, "measurement");
        note_unit(cells, row, measure, units);
        rows.push_back({std::move(measure), cells.sex(row, "sex"), cells.whole(row, key),
                        read(cells, row), row.line});
    }
    auto errors = cells.errors();
    check_repeats(rows, errors);
    std::ranges::stable_sort(errors, {}, &TableError::line);
    if (!errors.empty()) return tl::make_unexpected(std::move(errors));
    return ParameterTable<Parameters>(std::move(rows), std::move(units));
}

/// A cell that may hold one of two words; true for the first.
bool either(Cells& cells, Row const& row, std::string_view column, std::string_view yes,
            std::string_view no) {
    auto const& cell = cells.text(row, column);
    if (cell != yes && cell != no) {
        cells.error(row, "expected `" + std::string(yes) + "` or `" + std::string(no) +
                             "` in column `" + std::string(column) + "`, found `" + cell + "`");
    }
    return cell == yes;
}

VeryPreterm read_equation(Cells& cells, Row const& row) {
    return {.measure = cells.measure(row, "measurement"),
            .unit = cells.text(row, "unit"),
            .logarithm_of_value = either(cells, row, "transform_of_y", "ln", "none"),
            .root_of_weeks = either(cells, row, "ga_term", "sqrt(GA_weeks)", "GA_weeks"),
            .intercept = cells.number(row, "intercept"),
            .per_week = cells.number(row, "ga_coef"),
            .for_boys = cells.number(row, "male_coef"),
            .variance = cells.positive(row, "variance"),
            .days = {cells.whole(row, "ga_days_min"), cells.whole(row, "ga_days_max")}};
}

}  // namespace

template <class Parameters>
ParameterTable<Parameters>::ParameterTable(Rows rows, std::map<std::string, std::string> units)
    : rows_(std::move(rows)), units_(std::move(units)) {
    // Tables mostly come in order already, as those of an image always do.
    if (!std::ranges::is_sorted(rows_, {}, place<Parameters>))
        std::ranges::sort(rows_, {}, place<Parameters>);
}

template <class Parameters>
Parameters const* ParameterTable<Parameters>::find(std::string_view measure, Sex sex,
                                                   int key) const {
    auto const wanted = std::tuple(measure, sex, key);
    auto const found = std::ranges::lower_bound(rows_, wanted, {}, place<Parameters>);
    return found != rows_.end() && place(*found) == wanted ? &found->parameters : nullptr;
}

template <class Parameters>
std::optional<DayRange> ParameterTable<Parameters>::keys(std::string_view measure, Sex sex) const {
    auto const group = [](auto const& row) {
        return std::tuple<std::string_view, Sex>(row.measure, row.sex);
    };
    auto const wanted = std::tuple(measure, sex);
    auto const first = std::ranges::lower_bound(rows_, wanted, {}, group);
    auto const end = std::ranges::upper_bound(rows_, wanted, {}, group);
    if (first == end) return std::nullopt;
    return DayRange{first->key, std::prev(end)->key};
}

template <class Parameters>
std::string const* ParameterTable<Parameters>::unit(std::string_view measure) const {
    auto const found = units_.find(std::string(measure));
    return found == units_.end() ? nullptr : &found->second;
}

template class ParameterTable<Lms>;
template class ParameterTable<SkewT>;

tl::expected<LmsTable, TableErrors> read_lms_table(std::string_view text, std::string_view key) {
    return read_parameters<Lms>(text, key, {"L", "M", "S"}, [](Cells& cells, Row const& row) {
        return Lms{cells.number(row, "L"), cells.positive(row, "M"), cells.positive(row, "S")};
    });
}

tl::expected<SkewTTable, TableErrors> read_skew_t_table(std::string_view text) {
    return read_parameters<SkewT>(
        text, "ga_days", {"mu", "sigma", "nu", "tau"}, [](Cells& cells, Row const& row) {
            return SkewT{cells.number(row, "mu"), cells.positive(row, "sigma"),
                         cells.positive(row, "nu"), cells.positive(row, "tau")};
        });
}

tl::expected<std::vector<VeryPreterm>, TableErrors> read_very_preterm_table(std::string_view text) {
    auto const table = parse_table(text);
    if (!table) return tl::make_unexpected(table.error());
    Cells cells(*table, {"measurement", "unit", "transform_of_y", "intercept", "ga_term", "ga_coef",
                         "male_coef", "variance", "ga_days_min", "ga_days_max"});
    if (!cells.complete()) return tl::make_unexpected(cells.errors());
    std::vector<VeryPreterm> equations;
    for (auto const& row : table->rows) equations.push_back(read_equation(cells, row));
    if (!cells.errors().empty()) return tl::make_unexpected(cells.errors());
    return equations;
}

}  // namespace asterism::norms
