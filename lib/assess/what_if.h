// SPDX-License-Identifier: MIT
#pragma once

#include <map>
#include <vector>

#include "assess/facts.h"
#include "assess/ripple.h"
#include "assess/verdicts.h"
#include "compile/compiled.h"

namespace asterism {

/// Answers "and if this were otherwise?": the evaluated case with some facts replaced.
class WhatIf {
public:
    WhatIf(CompiledRulebook const& book, Case const& baby, CaseFacts const& facts);

    /// A change of facts, ready to be applied; several may be applied together.
    using Change = std::vector<std::pair<NodeId, Truth>>;

    /// The finding itself present, or absent, whatever was recorded. Its parents, children and
    /// derivations follow.
    Change finding(FindingId id, Truth value) const;
    /// Every test of a measure past no cut-off.
    Change measure_normal(MeasureId id) const;
    /// Every finding of the step that is not examined, absent.
    Change step_normal(StepId id) const;

    std::vector<ServiceVerdict> verdicts(std::vector<Change const*> const& changes) const;
    /// One finding, had nothing else been found in the same examination.
    std::vector<ServiceVerdict> alone(FindingId id) const;
    std::vector<ServiceVerdict> const& now() const { return now_; }

private:
    std::vector<ServiceVerdict> changed(std::vector<Truth> values,
                                        std::vector<Change const*> const& changes) const;

    CompiledRulebook const& book_;
    CaseFacts const& facts_;
    std::vector<ServiceVerdict> now_;
    std::vector<Truth> bare_;
    Ripple ripple_;
    std::map<FindingId, std::vector<Fact const*>> finding_facts_;
};

}  // namespace asterism
