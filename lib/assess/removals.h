// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "assess/assessment.h"
#include "assess/what_if.h"

namespace asterism {

/// The minimal sets of recorded findings and measures without which a suggestion falls.
class Removals {
public:
    Removals(CompiledRulebook const& book, CaseFacts const& facts, WhatIf const& what_if);

    void find(ServiceId service, WhatWouldChange& result) const;

private:
    using Set = std::vector<std::size_t>;  ///< positions in `candidates_`, ascending

    bool falls(ServiceId service, Set const& set) const;
    std::vector<Set> next_size(std::vector<Set> const& smaller,
                               std::vector<std::size_t> const& useful,
                               std::vector<Set> const& found) const;
    std::vector<std::size_t> useful_for(ServiceId service) const;
    void find_turned();
    bool may_rise(CompiledRule const& rule) const;
    bool matters(CompiledRule const& rule) const;
    bool all_found(ServiceId service, Set const& useful, std::vector<Set> const& found) const;

    CompiledRulebook const& book_;
    CaseFacts const& facts_;
    WhatIf const& what_if_;
    std::vector<Change> candidates_;
    std::vector<WhatIf::Change> changes_;
    std::vector<bool> falls_with_;  ///< by node: true may become false when a candidate is removed
    std::vector<bool> rises_with_;  ///< by node: false may become true when a candidate is removed
};

}  // namespace asterism
