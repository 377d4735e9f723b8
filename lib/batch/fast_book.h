// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "batch/fast_case.h"
#include "batch/fast_circuit.h"

namespace asterism::batch {

/// What judging asks of a finding again and again, close together in memory.
struct Brief {
    StepId step = 0;
    Sex sex = Sex::not_given;
    bool told = false;  ///< history, or the result of a test
    bool history_region = false;
};

/// A book made ready to judge many cases at once. Immutable, shared between threads.
class FastBook {
public:
    /// Refers to the book, which must outlive it.
    explicit FastBook(CompiledRulebook const& book);

    CompiledRulebook const& whole() const { return *book_; }
    Ontology const& ontology() const { return *book_->ontology; }
    FastCircuit const& circuit() const { return circuit_; }
    std::span<FindingId const> descendants(FindingId id) const { return descendants_[id]; }
    /// Findings that measures can decide.
    std::vector<FindingId> const& measured() const { return measured_; }
    Brief const& brief(FindingId id) const { return briefs_[id]; }
    /// What `examined: all` means.
    StepSet const& exam_steps() const { return exam_steps_; }

private:
    void note(FindingId id);

    CompiledRulebook const* book_;
    FastCircuit circuit_;
    Lists<FindingId> descendants_;
    std::vector<FindingId> measured_;
    std::vector<Brief> briefs_;
    StepSet exam_steps_;
};

}  // namespace asterism::batch
