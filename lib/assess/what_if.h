// SPDX-License-Identifier: MIT
#pragma once

#include <memory>
#include <vector>

#include "assess/facts.h"
#include "assess/grouped.h"
#include "assess/trial.h"
#include "assess/verdicts.h"
#include "compile/compiled.h"

namespace asterism {

/// Answers "and if this were otherwise?": the evaluated case with some facts replaced. For one
/// thread: each question is tried out and taken back.
class WhatIf {
public:
    /// `trial` starts from the values of `facts`.
    WhatIf(CompiledRulebook const& book, Case const& baby, CaseFacts const& facts,
           CaseTrial& trial);

    /// A change of facts, ready to be applied; several may be applied together.
    using Change = std::vector<std::pair<NodeId, Truth>>;

    /// The finding itself present, or absent, whatever was recorded. Its parents, children and
    /// derivations follow.
    Change finding(FindingId id, Truth value) const;
    /// Every test of a measure past no cut-off.
    Change measure_normal(MeasureId id) const;
    /// By StepId: every finding of the step that is not examined, absent.
    std::vector<Change> steps_normal() const;

    /// What a service's verdict becomes.
    Verdict verdict(std::vector<Change const*> const& changes, ServiceId service) const;
    /// The services that a change makes suggested, ascending.
    std::vector<ServiceId> newly_suggested(Change const& change) const;
    /// The services that one finding suggests, had nothing else been found in the same examination.
    std::vector<ServiceId> suggested_alone(FindingId id) const;

private:
    struct OwnFact {
        NodeId node = 0;
        bool detail = false;  ///< a side or a grade
    };

    static Grouped<OwnFact> own_facts(CompiledRulebook const& book);

    CompiledRulebook const& book_;
    Case const& baby_;
    CaseFacts const& facts_;
    CaseTrial& trial_;
    mutable std::unique_ptr<CaseTrial> bare_;  ///< nothing found; made when first asked of
    Grouped<OwnFact> own_facts_;               ///< by FindingId
};

}  // namespace asterism
