// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "assess/assessment.h"
#include "assess/what_if.h"

namespace asterism {

/// The fewest exam steps that, if all found normal, settle an open verdict.
class FewestSteps {
public:
    FewestSteps(CompiledRulebook const& book, Case const& baby, WhatIf const& what_if);

    void find(ServiceId service, WhatWouldChange& result) const;

private:
    using Set = std::vector<std::size_t>;

    bool settles(ServiceId service, Set const& set) const;
    Set all() const;
    Set needed(ServiceId service) const;
    /// Extends `set` by at most `more` steps from position `from` on until it settles; false when
    /// it cannot, or when the trials are used up.
    bool extend(ServiceId service, Set& set, std::size_t from, std::size_t more, int& trials) const;
    StepToDo to_do(std::size_t index) const;

    CompiledRulebook const& book_;
    WhatIf const& what_if_;
    std::vector<StepId> steps_;
    std::vector<WhatIf::Change> changes_;
};

}  // namespace asterism
