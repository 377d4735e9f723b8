// SPDX-License-Identifier: MIT
/// Simulated newborns without a major anomaly or illness, drawn from ontology/prevalences.
#pragma once

#include <cstdint>
#include <random>
#include <string_view>
#include <vector>

#include "cases/case.h"
#include "compile/compiled.h"

namespace asterism::testing {

/// Where a finding's frequency comes from.
enum class FrequencyFrom {
    row,             ///< its own row in ontology/prevalences
    rest_of_row,     ///< its row without what its kinds take
    minor_default,   ///< a minor variant that nobody counted
    normal_default,  ///< a normal variant that nobody counted
};

struct Frequency {
    FindingId finding = 0;
    double probability = 0;  ///< in babies of a sex that can have it
    FrequencyFrom from = FrequencyFrom::row;
    bool minor = false;
};

/// What a healthy baby can show: minor and normal variants that an examination step shows, and what
/// holds for a share of healthy babies by definition of a chart (a head below minus two standard
/// deviations). Major anomalies, red flags, history and results of tests are left out.
///
/// A row counts the kinds of its finding too: kinds are drawn on their own and taken off the row.
std::vector<Frequency> frequencies(CompiledRulebook const& book, double minor_default);

/// The rows of bedside minor variants, per 10,000, lowest first.
std::vector<double> published_minor_rows(CompiledRulebook const& book);

/// Draws babies: half of them girls, term, 30 hours old, every step done, findings independent but
/// for one published link (see the source).
class HealthyBabies {
public:
    HealthyBabies(CompiledRulebook const& book, std::vector<Frequency> frequencies,
                  std::uint64_t seed);
    Case next();

private:
    bool happens(double probability);

    CompiledRulebook const& book_;
    std::vector<Frequency> frequencies_;
    std::vector<bool> step_done_;
    FindingId small_, crease_;
    std::mt19937_64 random_;
};

/// The exact distribution of the number of counted minor keys: position n is the probability of n.
std::vector<double> exact_minor_counts(CompiledRulebook const& book,
                                       std::vector<Frequency> const& frequencies);

/// From `at_least` on, added up.
double tail(std::vector<double> const& distribution, std::size_t at_least);

}  // namespace asterism::testing
