// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "batch/fast_book.h"

namespace asterism::batch {

/// What one case says of a finding that it touches.
struct Touched {
    std::uint8_t stated = 0;  ///< `Stated` values, joined
    Sides present_sides = Sides::not_said;
    Sides absent_sides = Sides::not_said;
    bool familial = false;
    bool below_absent = false;  ///< an ancestor is stated absent
    bool measured = false;      ///< a measure was taken that decides it
    std::uint8_t way = no_way;  ///< how it is stated, when one statement is all that is said of it
    Truth own = Truth::unknown;

    /// Ways to state a finding without a grade: stated what, on which sides, familial or not.
    static constexpr std::uint8_t ways = 32;
    static constexpr std::uint8_t no_way = UINT8_MAX;

    bool says(Stated what) const { return (stated & static_cast<std::uint8_t>(what)) != 0; }
};

/// The own states of the findings that one case touches. The same precedence as in
/// `assess/facts.cpp`, looked up for these findings alone.
class OwnStates {
public:
    explicit OwnStates(FastBook const& book);

    /// Touches what sex and history alone change of the plainest baby.
    void start(FastCase const& baby, std::size_t start);
    /// Touches the findings of one step.
    void step(FastCase const& baby, StepId step);
    /// Touches the findings of the statements, as if they stood in one step.
    void statements(FastCase const& baby);
    /// Touches what changes beyond that: findings stated, below something stated absent, decided by
    /// a measure, or of the same step as one of these, when the case differs there.
    /// `tests`: what the measures say of each measure test; nothing where they say nothing.
    void work_out(FastCase const& baby, std::size_t start,
                  std::vector<std::optional<Truth>> const& tests);

    /// Findings of which one statement is all that is said in their step, which is as at the start.
    std::vector<FindingId> const& alone() const { return alone_; }
    /// Steps in which the case differs from its starting point, and of which it says no more.
    std::vector<StepId> const& steps() const { return steps_; }
    /// All other findings touched.
    std::vector<FindingId> const& touched() const { return together_; }
    Touched const& of(FindingId id) const { return states_[id]; }

private:
    void begin();
    void end(FastCase const& baby);
    Touched& touch(FindingId id);
    void note(FastStatement const& statement);
    void note_absent_below();
    void note_steps(FastCase const& baby, StepSet const& start);
    void note_step(StepId step);
    void sort_out();
    void note_sex_and_history(FastCase const& baby, std::size_t start);
    void note_measures(std::vector<std::optional<Truth>> const& tests);
    Truth own(FindingId id, FastCase const& baby) const;
    Truth unstated(FindingId id, FastCase const& baby) const;

    FastBook const& book_;
    std::vector<Touched> states_;
    std::vector<std::uint8_t> is_touched_;
    std::vector<FindingId> touched_;
    std::vector<StepId> steps_;
    std::vector<FindingId> alone_;
    std::vector<FindingId> together_;
    std::vector<std::uint16_t> in_step_;  ///< so many findings are touched, or more
};

}  // namespace asterism::batch
