// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "batch/fast_circuit.h"

namespace asterism::batch {

/// The state of a circuit from which cases start.
struct RunState {
    /// Everything about one node that changes, side by side.
    struct Node {
        Margin margin;
        Truth value = Truth::no;
        bool touched = false;
        bool held = false;
    };

    explicit RunState(FastCircuit::Snapshot const& snapshot);

    std::vector<Node> nodes;
    std::vector<NodeId> counting;  ///< counted nodes of splits that may be `yes`
};

/// Changes a state and takes the changes back: facts are set one by one, `settle` passes them on,
/// and `reset` undoes only what was touched. One thread's own.
class FastRun {
public:
    explicit FastRun(FastCircuit const& circuit);

    /// The state to be changed; it must stay until it is reset or kept.
    void begin(RunState& state) {
        state_ = &state;
        nodes_ = state.nodes.data();
    }
    void set(NodeId fact, Truth value) {
        if (nodes_[fact].value != value) change(fact, value);
    }
    /// Adds to a gate's margin what some of its inputs, that are left as they are, would add.
    void add(NodeId gate, Margin const& added) {
        touch(gate);
        nodes_[gate].margin += added;
        if (nodes_[gate].margin.truth() != nodes_[gate].value) mark_dirty(gate);
    }
    void settle();
    void reset();
    /// Makes the changes so far a part of the state.
    void keep();

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
    using Node = RunState::Node;
    struct Touched {
        NodeId node = 0;
        Node before;
    };

    void change(NodeId node, Truth value);
    void touch(NodeId node) {
        touched_[touched_count_] = {node, nodes_[node]};
        touched_count_ += nodes_[node].touched ? 0 : 1;
        nodes_[node].touched = true;
    }
    void mark_dirty(NodeId node) {
        dirty_[node / 64] |= 1ull << node % 64;
        dirty_words_[node / 4096] |= 1ull << node / 64 % 64;
    }
    void settle_word(std::size_t word);
    void note_split(Split const& split);
    void forget();

    FastCircuit const& circuit_;
    RunState* state_ = nullptr;
    Node* nodes_ = nullptr;
    std::vector<Touched> touched_;  ///< each touched node once, and room for one more
    std::size_t touched_count_ = 0;
    std::uint64_t changed_services_ = 0;
    std::vector<std::uint64_t> dirty_;        ///< a bit a node
    std::vector<std::uint64_t> dirty_words_;  ///< a bit a word of the above
    std::vector<NodeId> counting_;            ///< counted nodes of splits that changed
    std::vector<Literal> open_;
};

}  // namespace asterism::batch
