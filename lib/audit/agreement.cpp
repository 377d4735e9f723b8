// SPDX-License-Identifier: MIT
#include "audit/agreement.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace asterism::audit {

namespace {

double square(double x) { return x * x; }

double number(std::uint64_t count) { return static_cast<double>(count); }

/// Rounding can leave a variance just below 0.
double error_of(double variance) { return std::sqrt(std::max(0.0, variance)); }

}  // namespace

SquareTable::SquareTable(std::vector<std::vector<std::uint64_t>> rows) {
    auto const size = rows.size();
    for (auto const& row : rows) {
        for (auto const count : row) total_ += count;
    }
    share_.assign(size, std::vector<double>(size, 0));
    rows_.assign(size, 0);
    columns_.assign(size, 0);
    for (std::size_t i = 0; i < size && total_ > 0; ++i) {
        for (std::size_t j = 0; j < size; ++j) {
            share_[i][j] = number(rows[i][j]) / number(total_);
            rows_[i] += share_[i][j];
            columns_[j] += share_[i][j];
        }
    }
}

double SquareTable::agreed() const {
    double sum = 0;
    for (std::size_t i = 0; i < categories(); ++i) sum += share(i, i);
    return sum;
}

Interval Coefficient::interval() const {
    return {std::max(-1.0, value - z95 * error), std::min(1.0, value + z95 * error)};
}

std::optional<Coefficient> cohen_kappa(SquareTable const& t) {
    double const po = t.agreed();
    double pe = 0;
    for (std::size_t i = 0; i < t.categories(); ++i) pe += t.row(i) * t.column(i);
    constexpr double no_room = 1e-12;
    if (t.total() == 0 || 1 - pe < no_room) return std::nullopt;
    double const kappa = (po - pe) / (1 - pe);
    double on = 0, off = 0;
    for (std::size_t i = 0; i < t.categories(); ++i) {
        for (std::size_t j = 0; j < t.categories(); ++j) {
            if (i == j)
                on += t.share(i, i) * square(1 - (t.row(i) + t.column(i)) * (1 - kappa));
            else
                off += t.share(i, j) * square(t.column(i) + t.row(j));
        }
    }
    double const rest = square(kappa - pe * (1 - kappa));
    double const variance =
        (on + square(1 - kappa) * off - rest) / (number(t.total()) * square(1 - pe));
    return Coefficient{kappa, error_of(variance)};
}

std::optional<Coefficient> gwet_ac1(SquareTable const& t) {
    if (t.total() == 0) return std::nullopt;
    double const others = number(t.categories() - 1), po = t.agreed();
    double pe = 0, own = 0, pairs = 0;
    for (std::size_t i = 0; i < t.categories(); ++i) {
        auto const margin = t.mean_margin(i);
        pe += margin * (1 - margin) / others;
        own += t.share(i, i) * (1 - margin) / others;
        for (std::size_t j = 0; j < t.categories(); ++j)
            pairs += t.share(i, j) * square(1 - (margin + t.mean_margin(j)) / 2) / square(others);
    }
    double const ac1 = (po - pe) / (1 - pe);
    double const variance = (po * (1 - po) - 4 * (1 - ac1) * (own - po * pe) +
                             4 * square(1 - ac1) * (pairs - square(pe))) /
                            (number(t.total()) * square(1 - pe));
    return Coefficient{ac1, error_of(variance)};
}

double prevalence_index(FourCells const& c) {
    return c.total() == 0 ? 0 : std::abs(number(c.both) - number(c.neither)) / number(c.total());
}

double bias_index(FourCells const& c) {
    return c.total() == 0
               ? 0
               : std::abs(number(c.first_only) - number(c.second_only)) / number(c.total());
}

std::optional<double> positive_agreement(FourCells const& c) {
    auto const said = 2 * c.both + c.first_only + c.second_only;
    if (said == 0) return std::nullopt;
    return 2 * number(c.both) / number(said);
}

std::optional<double> negative_agreement(FourCells const& c) {
    auto const said = 2 * c.neither + c.first_only + c.second_only;
    if (said == 0) return std::nullopt;
    return 2 * number(c.neither) / number(said);
}

double prevalence_adjusted_kappa(FourCells const& c) { return 2 * c.table().agreed() - 1; }

std::optional<double> largest_kappa(FourCells const& c) {
    auto const t = c.table();
    double pe = 0, most = 0;
    for (std::size_t i = 0; i < 2; ++i) {
        pe += t.row(i) * t.column(i);
        most += std::min(t.row(i), t.column(i));
    }
    if (c.total() == 0 || pe >= 1) return std::nullopt;
    return (most - pe) / (1 - pe);
}

std::string_view strength_of_agreement(double coefficient) {
    struct Step {
        double most;
        std::string_view words;
    };
    static constexpr std::array<Step, 5> steps{{{0.2, "slight"},
                                                {0.4, "fair"},
                                                {0.6, "moderate"},
                                                {0.8, "substantial"},
                                                {2, "almost perfect"}}};
    if (coefficient < 0) return "poor";
    for (auto const& step : steps) {
        // Two decimals, as the scale is printed: .00-.20, .21-.40, ...
        if (coefficient < step.most + 0.005) return step.words;
    }
    return steps.back().words;
}

}  // namespace asterism::audit
