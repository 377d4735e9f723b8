// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "audit/proportion.h"

namespace asterism::audit {

/// How two raters placed the same subjects: row by row, the first rater's category by the second's.
class SquareTable {
public:
    explicit SquareTable(std::vector<std::vector<std::uint64_t>> rows);

    std::size_t categories() const { return share_.size(); }
    std::uint64_t total() const { return total_; }
    /// Share of all subjects in a cell, and of each rater's categories.
    double share(std::size_t row, std::size_t column) const { return share_[row][column]; }
    double row(std::size_t at) const { return rows_[at]; }
    double column(std::size_t at) const { return columns_[at]; }
    double mean_margin(std::size_t at) const { return (rows_[at] + columns_[at]) / 2; }
    double agreed() const;

private:
    std::uint64_t total_ = 0;
    std::vector<std::vector<double>> share_;
    std::vector<double> rows_;
    std::vector<double> columns_;
};

/// A coefficient of agreement with its large-sample standard error.
struct Coefficient {
    double value = 0;
    double error = 0;

    /// 95 %, cut at -1 and 1.
    Interval interval() const;
};

/// Cohen's kappa; the error is that of Fleiss, Cohen and Everitt (1969), which does not suppose
/// chance agreement. Nothing when both raters use one and the same category only.
std::optional<Coefficient> cohen_kappa(SquareTable const& table);
/// Gwet's AC1 with the variance of Gwet (2008), for an unbounded population of subjects. Nothing
/// for an empty table.
std::optional<Coefficient> gwet_ac1(SquareTable const& table);

/// Two by two: both yes, only the first, only the second, both no.
struct FourCells {
    std::uint64_t both = 0, first_only = 0, second_only = 0, neither = 0;

    std::uint64_t total() const { return both + first_only + second_only + neither; }
    SquareTable table() const { return SquareTable({{both, first_only}, {second_only, neither}}); }
};

/// Byrt, Bishop and Carlin (1993): (both - neither) / n, as a size, and the difference of the two
/// raters' shares, as a size.
double prevalence_index(FourCells const& cells);
double bias_index(FourCells const& cells);
/// Agreement on yes and on no (Cicchetti and Feinstein 1990); nothing when nobody said so.
std::optional<double> positive_agreement(FourCells const& cells);
std::optional<double> negative_agreement(FourCells const& cells);
/// Twice the observed agreement less one.
double prevalence_adjusted_kappa(FourCells const& cells);
/// The largest kappa that the raters' shares allow; nothing where kappa has no value.
std::optional<double> largest_kappa(FourCells const& cells);

/// The words of Landis and Koch (1977): `poor`, `slight`, ... `almost perfect`.
std::string_view strength_of_agreement(double coefficient);

}  // namespace asterism::audit
