// SPDX-License-Identifier: MIT
// Changes run through the circuit in the order of its nodes, so that each gate is looked at once
// after all its inputs are settled: a set of bits with a set of bits over it keeps the order.
#include "batch/fast_run.h"

#include <algorithm>
#include <bit>

namespace asterism::batch {

namespace {

constexpr std::size_t bits = 64;

std::size_t words_for(std::size_t count) { return (count + bits - 1) / bits; }

}  // namespace

RunState::RunState(FastCircuit::Snapshot const& snapshot) : counting(snapshot.counting) {
    for (NodeId node = 0; node < snapshot.values.size(); ++node)
        nodes.push_back({snapshot.margins[node], snapshot.values[node], false, false});
}

FastRun::FastRun(FastCircuit const& circuit)
    : circuit_(circuit),
      touched_(circuit.size() + 1),
      dirty_(words_for(circuit.size()), 0),
      dirty_words_(words_for(dirty_.size()), 0) {}

void FastRun::change(NodeId node, Truth value) {
    Turn const turn(nodes_[node].value, value);
    touch(node);
    nodes_[node].value = value;
    if (circuit_.counts(node)) counting_.push_back(node);
    if (node >= circuit_.first_answer()) changed_services_ |= circuit_.service_bit(node);
    // The count lives in a register here: through memory, each edge would wait for the last.
    auto* const nodes = nodes_;
    auto* const touched = touched_.data();
    auto count = touched_count_;
    for (auto const& edge : circuit_.edges(node)) {
        auto& target = nodes[edge.gate];
        touched[count] = {edge.gate, target};
        count += target.touched ? 0 : 1;
        target.touched = true;
        turn.pass(edge, target.margin);
        if (target.margin.truth() != target.value) mark_dirty(edge.gate);
    }
    touched_count_ = count;
}

void FastRun::settle_word(std::size_t word) {
    while (dirty_[word] != 0) {
        auto const bit = static_cast<std::size_t>(std::countr_zero(dirty_[word]));
        dirty_[word] &= dirty_[word] - 1;
        auto const node = static_cast<NodeId>(word * bits + bit);
        if (nodes_[node].held) continue;
        auto const value = nodes_[node].margin.truth();
        if (value != nodes_[node].value) change(node, value);
    }
}

void FastRun::settle() {
    for (std::size_t group = 0; group < dirty_words_.size(); ++group) {
        while (dirty_words_[group] != 0) {
            auto const bit = static_cast<std::size_t>(std::countr_zero(dirty_words_[group]));
            settle_word(group * bits + bit);
            dirty_words_[group] &= ~(1ull << bit);
        }
    }
}

void FastRun::reset() {
    for (std::size_t i = 0; i < touched_count_; ++i) nodes_[touched_[i].node] = touched_[i].before;
    forget();
}

void FastRun::keep() {
    for (std::size_t i = 0; i < touched_count_; ++i) nodes_[touched_[i].node].touched = false;
    state_->counting.insert(state_->counting.end(), counting_.begin(), counting_.end());
    forget();
}

void FastRun::forget() {
    touched_count_ = 0;
    changed_services_ = 0;
    counting_.clear();
}

void FastRun::note_split(Split const& split) {
    if (value(split.counted) != Truth::yes || value(split.unless) != Truth::unknown) return;
    if (std::find(open_.begin(), open_.end(), split.unless) == open_.end())
        open_.push_back(split.unless);
}

std::vector<Literal> const& FastRun::open_splits() {
    open_.clear();
    for (auto const list :
         {std::span<NodeId const>(counting_), std::span<NodeId const>(state_->counting)}) {
        for (auto const node : list) {
            for (auto const& split : circuit_.splits_of(node)) note_split(split);
        }
    }
    return open_;
}

void FastRun::hold(NodeId node, Truth value) {
    touch(node);
    nodes_[node].held = true;
    if (nodes_[node].value != value) change(node, value);
}

}  // namespace asterism::batch
