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
    Truth own = Truth::unknown;

    bool says(Stated what) const { return (stated & static_cast<std::uint8_t>(what)) != 0; }
};

/// The own states of the findings that one case touches. The same precedence as in
/// `assess/facts.cpp`, looked up for these findings alone.
class OwnStates {
public:
    explicit OwnStates(FastBook const& book);

    /// Touches findings stated, below something stated absent, or decided by a measure.
    /// `tests`: what the measures say of each measure test; nothing where they say nothing.
    void work_out(FastCase const& baby, std::vector<std::optional<Truth>> const& tests);

    std::vector<FindingId> const& touched() const { return touched_; }
    Touched const& of(FindingId id) const { return states_[id]; }

private:
    Touched& touch(FindingId id);
    void note(FastStatement const& statement);
    void note_absent_below();
    void note_measures(std::vector<std::optional<Truth>> const& tests);
    Truth own(FindingId id, FastCase const& baby) const;
    Truth unstated(FindingId id, FastCase const& baby) const;

    FastBook const& book_;
    std::vector<Touched> states_;
    std::vector<std::uint8_t> is_touched_;
    std::vector<FindingId> touched_;
};

}  // namespace asterism::batch
