// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "batch/fast_circuit.h"

namespace asterism::batch {

/// One thread's copy of the circuit's state, started from a snapshot. Facts are set one by one,
/// `settle` passes the changes on, and `reset` undoes only what was touched.
class FastRun {
public:
    FastRun(FastCircuit const& circuit, FastCircuit::Snapshot const& start);

    void set(NodeId fact, Truth value) {
        if (values_[fact] != value) change(fact, value);
    }
    void settle();
    void reset();

    Truth value(NodeId node) const { return values_[node]; }
    Truth value(Literal literal) const {
        return literal.negated ? !values_[literal.node] : values_[literal.node];
    }
    /// The questions on which a count hangs although its minor variant is there, each once. Asked
    /// before anything is held.
    std::vector<Literal> const& open_splits();

    /// Holds a node, fact or gate, at a value until the reset, whatever its inputs say; then
    /// `settle`.
    void hold(NodeId node, Truth value);

private:
    static constexpr std::uint8_t touched_mark = 1, held_mark = 2;

    void change(NodeId node, Truth value);
    void touch(NodeId node);
    void mark_dirty(NodeId node) {
        dirty_[node / 64] |= 1ull << node % 64;
        dirty_words_[node / 4096] |= 1ull << node / 64 % 64;
    }
    void settle_word(std::size_t word);
    void note_split(Split const& split);

    FastCircuit const& circuit_;
    FastCircuit::Snapshot const& start_;
    std::vector<Truth> values_;
    std::vector<Margin> margins_;
    std::vector<std::uint8_t> marks_;
    std::vector<NodeId> touched_;
    std::vector<std::uint64_t> dirty_;        ///< a bit a node
    std::vector<std::uint64_t> dirty_words_;  ///< a bit a word of the above
    std::vector<NodeId> counting_;            ///< counted nodes of splits that became `yes`
    std::vector<Literal> open_;
};

}  // namespace asterism::batch
