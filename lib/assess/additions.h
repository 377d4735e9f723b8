// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "assess/assessment.h"
#include "assess/what_if.h"

namespace asterism {

/// The smallest additions that would make a referral suggested by completing something already partly met.
/// Findings that would do it alone, whatever else is there, are only counted.
class Additions {
public:
    Additions(CompiledRulebook const& book, Case const& baby, CaseFacts const& facts, WhatIf const& what_if);

    void find(ServiceId service, WhatWouldChange& result) const;

private:
    struct Candidate {
        FindingId finding = 0;
        WhatIf::Change change;
        std::vector<bool> suggests;  ///< by service, added to this case
        std::vector<bool> alone;     ///< by service, in a case of nothing else
    };

    bool can_be_added(Case const& baby, CaseFacts const& facts, FindingId id) const;
    void find_pairs(ServiceId service, WhatWouldChange& result) const;
    Change named(Candidate const& candidate) const;

    CompiledRulebook const& book_;
    WhatIf const& what_if_;
    std::vector<Candidate> candidates_;
};

}  // namespace asterism
