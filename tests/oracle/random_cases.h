// SPDX-License-Identifier: MIT
#pragma once

#include <chrono>
#include <cstdint>
#include <random>
#include <vector>

#include "cases/case.h"
#include "oracle/subject.h"

namespace asterism::oracle {

/// Numbers that are the same on every machine for the same seed.
class Dice {
public:
    explicit Dice(std::uint64_t seed) : engine_(seed) {}

    std::size_t below(std::size_t n) { return static_cast<std::size_t>(engine_() % n); }
    bool in_100(unsigned percent) { return below(100) < percent; }
    template <class T>
    T const& one_of(std::vector<T> const& list) {
        return list[below(list.size())];
    }

private:
    std::mt19937_64 engine_;
};

/// The seed in ASTERISM_SEED, or one that never changes.
std::uint64_t seed_from_environment();
/// The number in ASTERISM_RANDOM_CASES, or the given one.
std::size_t cases_from_environment(std::size_t otherwise);
/// How long a run may take by ASTERISM_RANDOM_SECONDS, or as given.
std::chrono::seconds seconds_from_environment(std::chrono::seconds otherwise);

/// Invents babies whose findings lie near a book's conditions: each takes some of what a few of its
/// rules, constellations and derivations speak of, and a few findings from anywhere.
class CaseMaker {
public:
    CaseMaker(Subject const& subject, std::uint64_t seed);

    /// A case without contradictions.
    Case make();
    Dice& dice() { return dice_; }

private:
    /// What one condition speaks of.
    struct Topic {
        std::vector<FindingId> findings;
        std::vector<MeasureId> measures;
    };

    void add_topic(yaml::Node const& condition, Topic& topic);
    void note_cut_offs(yaml::Node const& condition);
    void choose_steps(Case& baby);
    void choose_facts(Case& baby);
    void choose_findings(Case& baby);
    void choose_measures(Case& baby, Topic const& topic);
    void state(Case& baby, FindingId finding);
    void state_present(Case& baby, FindingId finding);
    Statement statement(FindingId finding);
    void add(Case& baby, std::vector<Statement> Case::*list, Statement const& statement);
    double value_near_cut_off(MeasureId measure);

    Subject const& subject_;
    Ontology const& ontology_;
    Dice dice_;
    std::vector<Topic> topics_;
    std::vector<FindingId> classed_;
    std::vector<std::vector<double>> cut_offs_;  ///< by MeasureId, in the measure's unit
};

}  // namespace asterism::oracle
