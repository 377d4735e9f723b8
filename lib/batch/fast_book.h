// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <optional>

#include "assess/facts.h"
#include "batch/fast_case.h"
#include "batch/fast_circuit.h"

namespace asterism::batch {

/// A book made ready for many cases: its circuit made for change, and what the circuit says of the
/// plainest babies, worked out by the engine itself: nothing or all examined, of either sex or
/// none, with or without a history. Each case is judged as a change of the nearest of these.
/// Immutable, shared between threads.
class FastBook {
public:
    /// Refers to the book, which must outlive it. Nothing when the circuit does not fit.
    static std::optional<FastBook> make(CompiledRulebook const& book);

    CompiledRulebook const& whole() const { return *book_; }
    Ontology const& ontology() const { return *book_->ontology; }
    FastCircuit const& circuit() const { return circuit_; }
    std::span<FindingId const> descendants(FindingId id) const { return descendants_[id]; }
    std::span<FindingId const> ancestors(FindingId id) const { return ancestors_[id]; }
    std::span<FindingId const> findings_of(StepId step) const { return of_step_[step]; }
    /// Findings that measures can decide.
    std::vector<FindingId> const& measured() const { return measured_; }
    bool history_region(FindingId id) const { return history_region_[id] != 0; }

    /// The plainest babies, numbered. Two cases with one number differ from it in statements,
    /// steps, measures, age and gestation only.
    static constexpr std::size_t starts = 12;
    std::size_t nearest(FastCase const& baby) const;
    StepSet const& steps(std::size_t start) const {
        return start % 2 == 0 ? no_steps_ : all_steps_;
    }
    FastCircuit::Snapshot const& snapshot(std::size_t start, Rest rest) const {
        return snapshots_[start * 2 + (rest == Rest::normal ? 1 : 0)];
    }

private:
    FastBook(CompiledRulebook const& book, FastCircuit circuit);
    void take_snapshots();
    Case plainest(std::size_t start) const;

    CompiledRulebook const* book_;
    FastCircuit circuit_;
    Lists<FindingId> descendants_;
    Lists<FindingId> ancestors_;
    Lists<FindingId> of_step_;
    std::vector<FindingId> measured_;
    std::vector<std::uint8_t> history_region_;
    StepSet no_steps_;
    StepSet all_steps_;
    std::vector<bool> all_done_;
    std::vector<FastCircuit::Snapshot> snapshots_;
};

}  // namespace asterism::batch
