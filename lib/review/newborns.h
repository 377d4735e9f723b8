// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <random>
#include <vector>

#include "cases/case.h"
#include "compile/compiled.h"

namespace asterism {

/// Where a finding's frequency comes from.
enum class FrequencyFrom : std::uint8_t {
    row,             ///< its own row in ontology/prevalences
    rest_of_row,     ///< its row without what its kinds take
    minor_default,   ///< a minor variant that nobody counted
    normal_default,  ///< a normal variant that nobody counted
};

/// How often a simulated newborn shows a finding.
struct Frequency {
    FindingId finding = 0;
    double probability = 0;  ///< 0 to 1, in babies of a sex that can have it
    FrequencyFrom from = FrequencyFrom::row;
    bool minor = false;
};

/// Whom to simulate. The defaults per 10,000 are choices of this project, not published numbers:
/// tests/book/healthy_babies_test.cpp shows what follows from them.
struct NewbornModel {
    /// True leaves out major anomalies, red flags and results of tests.
    bool healthy_only = false;
    double minor_default = 20;    ///< of a minor variant without a row
    double normal_default = 400;  ///< of a normal variant without a row: the book's limit of 4 %
};

/// What a newborn can show, in the ontology's order: minor and normal variants that an examination
/// step shows, what holds for a share of healthy babies by the definition of a chart, and (unless
/// healthy only) each major anomaly and red flag that has a row, results of tests included. History
/// is left out, and so is a major anomaly that nobody counted: see `uncounted`.
///
/// A row counts the kinds of its finding too: kinds are drawn on their own and taken off the row.
std::vector<Frequency> frequencies(CompiledRulebook const& book, NewbornModel const& model);

/// Major anomalies and red flags of the examination that have no row of their own and no
/// ancestor's: a simulation never shows them.
std::vector<FindingId> uncounted(CompiledRulebook const& book);

/// Draws newborns: half of them girls, 39 weeks and 2 days, 30 hours old, every exam step done,
/// findings independent but for one published link (see the source). The same book, model and seed
/// give the same babies on every machine.
class Newborns {
public:
    Newborns(CompiledRulebook const& book, std::vector<Frequency> frequencies, std::uint64_t seed);
    Newborns(CompiledRulebook const& book, NewbornModel const& model, std::uint64_t seed);

    /// The next baby; `newborn-1` is the first.
    Case next();

private:
    bool happens(double probability);

    Ontology const& ontology_;
    std::vector<Frequency> frequencies_;
    std::vector<bool> step_done_;
    std::optional<FindingId> small_, crease_;
    std::size_t drawn_ = 0;
    std::mt19937_64 random_;
};

/// The findings of the one published link, and how much oftener the crease is seen in small babies.
inline constexpr auto link_small_baby = "very-small-for-gestational-age";
inline constexpr auto link_crease = "single-transverse-palmar-crease";
inline constexpr double link_factor = 1.85;

/// Whether a baby of this sex can have the finding.
bool can_occur(Ontology const& ontology, FindingId finding, Sex sex);

}  // namespace asterism
