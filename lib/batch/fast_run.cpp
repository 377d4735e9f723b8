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
        nodes.emplace_back(snapshot.margins[node], snapshot.values[node]);
    nodes.emplace_back(Margin(-1, -1), Truth::no);  // FastCircuit::nowhere
}

FastRun::FastRun(FastCircuit const& circuit)
    : circuit_(circuit),
      touched_(circuit.size() + 2),
      dirty_(words_for(circuit.size()), 0),
      dirty_words_(words_for(dirty_.size()), 0),
      counting_(circuit.size() + 1) {}

// Which gates a change reaches, and what becomes of them, is hard to foresee for the processor: so
// this has as few branches as can be. Counts live in registers: through memory, each edge would
// wait for the last.
void FastRun::change(NodeId node, Truth value) {
    auto* const nodes = nodes_;
    Turn const turn(nodes[node].value(), value);
    touch(node);
    nodes[node].set_value(value);
    counting_[counting_count_] = node;
    counting_count_ += circuit_.counts(node) && counting_count_ < circuit_.size() ? 1 : 0;
    auto* const touched = touched_.data();
    auto count = touched_count_;
    for (auto const& pair : circuit_.edges(node)) {
        for (auto const& edge : pair) {
            auto target = nodes[edge.gate];
            touched[count] = {edge.gate, target};
            count += target.touched() ? 0 : 1;
            target.touch();
            target.add(turn.along(edge));
            nodes[edge.gate] = target;
            mark_dirty(edge.gate, !target.settled());
        }
    }
    touched_count_ = count;
}

void FastRun::settle_node(NodeId node) {
    if (nodes_[node].held() || nodes_[node].settled()) return;
    change(node, nodes_[node].margin().truth());
    if (node >= circuit_.first_answer()) changed_services_ |= circuit_.service_bit(node);
}

void FastRun::settle() {
    for (std::size_t group = 0; group < dirty_words_.size(); ++group) {
        while (dirty_words_[group] != 0) {
            auto const word =
                group * bits + static_cast<std::size_t>(std::countr_zero(dirty_words_[group]));
            auto const set = dirty_[word];
            auto const rest = set & (set - 1);
            dirty_[word] = rest;
            // Clears the word's bit when nothing is left of it.
            dirty_words_[group] &= dirty_words_[group] - (rest == 0 ? 1 : 0);
            settle_node(static_cast<NodeId>(word * bits) +
                        static_cast<NodeId>(std::countr_zero(set)));
        }
    }
}

void FastRun::reset() {
    for (std::size_t i = 0; i < touched_count_; ++i) nodes_[touched_[i].node] = touched_[i].before;
    forget();
}

void FastRun::keep() {
    for (std::size_t i = 0; i < touched_count_; ++i) nodes_[touched_[i].node].untouch();
    auto const counting = std::span(counting_).first(counting_count_);
    state_->counting.insert(state_->counting.end(), counting.begin(), counting.end());
    forget();
}

void FastRun::forget() {
    touched_count_ = 0;
    changed_services_ = 0;
    counting_count_ = 0;
}

void FastRun::note_split(Split const& split) {
    if (value(split.counted) != Truth::yes || value(split.unless) != Truth::unknown) return;
    if (std::find(open_.begin(), open_.end(), split.unless) == open_.end())
        open_.push_back(split.unless);
}

std::vector<Literal> const& FastRun::open_splits() {
    open_.clear();
    for (auto const list : {std::span<NodeId const>(counting_).first(counting_count_),
                            std::span<NodeId const>(state_->counting)}) {
        for (auto const node : list) {
            for (auto const& split : circuit_.splits_of(node)) note_split(split);
        }
    }
    return open_;
}

void FastRun::hold(NodeId node, Truth value) {
    touch(node);
    nodes_[node].hold();
    if (nodes_[node].value() != value) change(node, value);
}

}  // namespace asterism::batch
