// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <set>
#include <utility>
#include <vector>

#include "assess/assessment.h"
#include "assess/what_if.h"

namespace asterism {

/// The smallest additions that would make a referral suggested by completing something already
/// partly met. Findings that would do it alone, had nothing else been found, are only counted.
class Additions {
public:
    Additions(CompiledRulebook const& book, Case const& baby, CaseFacts const& facts,
              WhatIf const& what_if);

    void find(ServiceId service, WhatWouldChange& result) const;

private:
    struct Candidate {
        FindingId finding = 0;
        WhatIf::Change change;
        std::vector<ServiceId> suggests;  ///< made suggested when added to this case
        /// Suggested had nothing else been found; worked out when first asked for.
        mutable std::optional<std::vector<ServiceId>> alone;
    };

    bool can_be_added(Case const& baby, CaseFacts const& facts, FindingId id) const;
    bool suggests_alone(Candidate const& candidate, ServiceId service) const;
    using Pool = std::vector<std::size_t>;  ///< positions in `candidates_`, ascending

    struct Search {
        ServiceId service = 0;
        int trials = 0;  ///< left
        std::set<std::pair<std::size_t, std::size_t>> seen;
    };

    void find_pairs(ServiceId service, WhatWouldChange& result) const;
    std::vector<Pool> pools(ServiceId service, Pool const& rest) const;
    void search_pairs(Pool const& pool, Search& search, WhatWouldChange& result) const;
    Change named(Candidate const& candidate) const;

    CompiledRulebook const& book_;
    WhatIf const& what_if_;
    std::vector<Candidate> candidates_;
    std::vector<WhatIf::Change> recorded_;  ///< what is there already
};

}  // namespace asterism
