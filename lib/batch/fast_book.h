// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <optional>

#include "assess/facts.h"
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

/// A book made ready for many cases: its circuit made for change, and what the circuit says of the
/// two plainest babies, worked out by the engine itself. Each case is judged as a change of the
/// nearer one.
/// Immutable, shared between threads.
class FastBook {
public:
    /// Refers to the book, which must outlive it. Nothing when the circuit does not fit.
    static std::optional<FastBook> make(CompiledRulebook const& book);

    CompiledRulebook const& whole() const { return *book_; }
    Ontology const& ontology() const { return *book_->ontology; }
    FastCircuit const& circuit() const { return circuit_; }
    std::span<FindingId const> descendants(FindingId id) const { return descendants_[id]; }
    std::span<FindingId const> findings_of(StepId step) const { return of_step_[step]; }
    /// Findings that measures can decide.
    std::vector<FindingId> const& measured() const { return measured_; }
    Brief const& brief(FindingId id) const { return briefs_[id]; }

    /// The plainest babies: 0 with nothing examined, 1 with everything.
    static constexpr std::size_t starts = 2;
    std::size_t nearest(FastCase const& baby) const;
    StepSet const& steps(std::size_t start) const { return start == 0 ? no_steps_ : all_steps_; }
    FastCircuit::Snapshot const& snapshot(std::size_t start, Rest rest) const {
        return snapshots_[start * 2 + (rest == Rest::normal ? 1 : 0)];
    }
    /// Findings of one sex that are open at this start, so that knowing the sex matters to them.
    std::vector<FindingId> const& of_one_sex(std::size_t start) const { return of_one_sex_[start]; }
    /// Findings told and not examined of which a rule wants to know whether they are absent.
    std::vector<FindingId> const& essential_history() const { return essential_history_; }

private:
    FastBook(CompiledRulebook const& book, FastCircuit circuit);
    void note(FindingId id);
    void take_snapshots();

    CompiledRulebook const* book_;
    FastCircuit circuit_;
    Lists<FindingId> descendants_;
    Lists<FindingId> of_step_;
    std::vector<FindingId> measured_;
    std::array<std::vector<FindingId>, starts> of_one_sex_;
    std::vector<FindingId> essential_history_;
    std::vector<Brief> briefs_;
    StepSet no_steps_;
    StepSet all_steps_;
    std::vector<bool> all_done_;
    std::vector<FastCircuit::Snapshot> snapshots_;
};

}  // namespace asterism::batch
