// SPDX-License-Identifier: MIT
#pragma once

#include "assess/facts.h"
#include "batch/own_states.h"

namespace asterism::batch {

/// The truth of each fact that a case changes; the same meaning as in `assess/facts.cpp`.
class FactValues {
public:
    FactValues(FastBook const& book, FastCase const& baby, OwnStates const& states,
               std::vector<std::optional<Truth>> const& tests, Rest rest)
        : book_(book), baby_(baby), states_(states), tests_(tests), rest_(rest) {}

    Truth of_finding(FindingId id, FindingFact const& fact) const;
    /// Of a measure, or of an age or gestation that was given.
    Truth of_baby(BabyFact const& fact) const;

private:
    Truth missing() const { return rest_ == Rest::normal ? Truth::no : Truth::unknown; }
    bool examined(FindingId id) const { return !book_.brief(id).told; }
    Truth finding(FindingId id) const;
    Truth not_present(FindingId id) const { return examined(id) ? finding(id) : Truth::no; }
    Truth side(FindingId id, Sides wanted) const;
    Truth grade(FindingId id, std::uint32_t wanted) const;

    FastBook const& book_;
    FastCase const& baby_;
    OwnStates const& states_;
    std::vector<std::optional<Truth>> const& tests_;
    Rest rest_;
};

}  // namespace asterism::batch
