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
        if (nodes_[fact].value != value) change(fact, value);
    }
    void settle();
    void reset();

    Truth value(NodeId node) const { return nodes_[node].value; }
    Truth value(Literal literal) const {
        auto const value = nodes_[literal.node].value;
        return literal.negated ? !value : value;
    }
    /// The services (the first 64, a bit each) for which an answer may differ from the start's.
    std::uint64_t changed_services() const { return changed_services_; }
    /// The questions on which a count hangs although its minor variant is there, each once. Asked
    /// before anything is held.
    std::vector<Literal> const& open_splits();

    /// Holds a node, fact or gate, at a value until the reset, whatever its inputs say; then
    /// `settle`.
    void hold(NodeId node, Truth value);

private:
    /// Everything about one node that changes, side by side.
    struct Node {
        Margin margin;
        Truth value = Truth::no;
        bool touched = false;
        bool held = false;
    };

    void change(NodeId node, Truth value);
    void touch(NodeId node) {
        touched_[touched_count_] = node;
        touched_count_ += nodes_[node].touched ? 0 : 1;
        nodes_[node].touched = true;
    }
    void mark_dirty(NodeId node) {
        dirty_[node / 64] |= 1ull << node % 64;
        dirty_words_[node / 4096] |= 1ull << node / 64 % 64;
    }
    void settle_word(std::size_t word);
    void note_split(Split const& split);

    FastCircuit const& circuit_;
    FastCircuit::Snapshot const& start_;
    std::vector<Node> first_;  ///< the nodes as they are at the start
    std::vector<Node> nodes_;
    std::vector<NodeId> touched_;  ///< each touched node once, and room for one more
    std::size_t touched_count_ = 0;
    std::uint64_t changed_services_ = 0;
    std::vector<std::uint64_t> dirty_;        ///< a bit a node
    std::vector<std::uint64_t> dirty_words_;  ///< a bit a word of the above
    std::vector<NodeId> counting_;            ///< counted nodes of splits that became `yes`
    std::vector<Literal> open_;
};

}  // namespace asterism::batch
