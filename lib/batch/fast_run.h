// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "batch/fast_circuit.h"

namespace asterism::batch {

/// Everything about one node that changes, in one word: to read back at once what was written in
/// parts would be slow.
class NodeState {
public:
    NodeState() = default;
    NodeState(Margin margin, Truth value)
        : word_(margin.bits() | static_cast<std::uint64_t>(value) << value_at) {}

    Margin margin() const { return Margin::from_bits(static_cast<std::uint32_t>(word_)); }
    Truth value() const { return static_cast<Truth>(word_ >> value_at & 3u); }
    bool settled() const { return margin().truth() == value(); }
    bool touched() const { return (word_ & touched_bit) != 0; }
    bool held() const { return (word_ & held_bit) != 0; }

    void add(Margin more) { word_ = (word_ & ~margin_bits) | (margin() + more).bits(); }
    void set_value(Truth value) {
        word_ = (word_ & ~(3ull << value_at)) | static_cast<std::uint64_t>(value) << value_at;
    }
    void touch() { word_ |= touched_bit; }
    void untouch() { word_ &= ~touched_bit; }
    void hold() { word_ |= held_bit; }

private:
    static constexpr int value_at = 32;
    static constexpr std::uint64_t margin_bits = UINT32_MAX;
    static constexpr std::uint64_t touched_bit = 1ull << 34;
    static constexpr std::uint64_t held_bit = 1ull << 35;

    std::uint64_t word_ = 0;
};

/// The state of a circuit from which cases start.
struct RunState {
    explicit RunState(FastCircuit::Snapshot const& snapshot);

    std::vector<NodeState> nodes;
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
        if (nodes_[fact].value() != value) change(fact, value);
    }
    /// Adds to a gate's margin what some of its inputs, that are left as they are, would add.
    void add(NodeId gate, Margin added) {
        touch(gate);
        nodes_[gate].add(added);
        mark_dirty(gate, !nodes_[gate].settled());
    }
    void settle();
    void reset();
    /// Makes the changes so far a part of the state.
    void keep();

    Truth value(NodeId node) const { return nodes_[node].value(); }
    Truth value(Literal literal) const {
        auto const value = nodes_[literal.node].value();
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
    struct Touched {
        NodeId node = 0;
        NodeState before;
    };

    void change(NodeId node, Truth value);
    void touch(NodeId node) {
        touched_[touched_count_] = {node, nodes_[node]};
        touched_count_ += nodes_[node].touched() ? 0 : 1;
        nodes_[node].touch();
    }
    void mark_dirty(NodeId node, bool dirty) {
        auto const bit = static_cast<std::uint64_t>(dirty);
        dirty_[node / 64] |= bit << node % 64;
        dirty_words_[node / 4096] |= bit << node / 64 % 64;
    }
    void settle_node(NodeId node);
    void note_split(Split const& split);
    void forget();

    FastCircuit const& circuit_;
    RunState* state_ = nullptr;
    NodeState* nodes_ = nullptr;
    std::vector<Touched> touched_;  ///< each touched node once, and room for one more
    std::size_t touched_count_ = 0;
    std::uint64_t changed_services_ = 0;
    std::vector<std::uint64_t> dirty_;        ///< a bit a node
    std::vector<std::uint64_t> dirty_words_;  ///< a bit a word of the above
    std::vector<NodeId> counting_;  ///< counted nodes of splits that changed, and room for one more
    std::size_t counting_count_ = 0;
    std::vector<Literal> open_;
};

}  // namespace asterism::batch
