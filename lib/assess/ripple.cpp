// SPDX-License-Identifier: MIT
#include "assess/ripple.h"

#include <algorithm>
#include <bit>

namespace asterism {

namespace {

/// By how much the lower and the upper bound of a sum move when an input of this weight turns.
Bounds shift(std::int64_t weight, Truth before, Truth after) {
    return {weight * ((after == Truth::yes) - (before == Truth::yes)),
            weight * ((after != Truth::no) - (before != Truth::no))};
}

}  // namespace

Ripple::Ripple(Circuit const& circuit, std::vector<Truth> values)
    : Ripple(circuit, wires(circuit), std::move(values)) {}

Ripple::Ripple(Ripple const& other, std::vector<Truth> values)
    : Ripple(other.circuit_, other.wires_, std::move(values)) {}

Ripple::Ripple(Circuit const& circuit, std::shared_ptr<Wires const> wires,
               std::vector<Truth> values)
    : circuit_(circuit),
      values_(std::move(values)),
      wires_(std::move(wires)),
      bounds_(circuit.size()),
      due_(circuit.size() / 64 + 1),
      first_due_(due_.size()) {
    for (NodeId node = 0; node < circuit.size(); ++node)
        if (!circuit.is_fact(node)) bounds_[node] = sum(circuit.inputs(node), values_);
}

std::shared_ptr<Ripple::Wires const> Ripple::wires(Circuit const& circuit) {
    return std::make_shared<Wires const>(circuit.size(), [&](auto put) {
        for (NodeId gate = 0; gate < circuit.size(); ++gate) {
            if (circuit.is_fact(gate)) continue;
            for (auto const& [literal, weight] : circuit.inputs(gate))
                put(literal.node, Wire{gate, literal.negated, weight});
        }
    });
}

Truth Ripple::value_of_gate(NodeId gate) const {
    auto const threshold = circuit_.threshold(gate);
    if (bounds_[gate].low >= threshold) return Truth::yes;
    return bounds_[gate].high >= threshold ? Truth::unknown : Truth::no;
}

void Ripple::shift_bounds(NodeId node, Truth before, Truth after) {
    for (auto const& wire : wires_->at(node)) {
        auto const by =
            wire.negated ? shift(wire.weight, !before, !after) : shift(wire.weight, before, after);
        bounds_[wire.gate].low += by.low;
        bounds_[wire.gate].high += by.high;
    }
}

void Ripple::call_gates(NodeId node) {
    for (auto const& wire : wires_->at(node)) {
        auto const word = wire.gate / 64;
        due_[word] |= std::uint64_t{1} << wire.gate % 64;
        first_due_ = std::min<std::size_t>(first_due_, word);
        last_due_ = std::max<std::size_t>(last_due_, word);
    }
}

void Ripple::set(NodeId node, Truth value) {
    auto const before = values_[node];
    if (before == value) return;
    values_[node] = value;
    turns_.push_back({node, before, value});
    shift_bounds(node, before, value);
    call_gates(node);
}

/// Gates stand after their inputs: in ascending order each is looked at once.
void Ripple::settle() {
    for (auto i = first_due_; i <= last_due_; ++i) {
        while (due_[i] != 0) {
            auto const bit = static_cast<std::size_t>(std::countr_zero(due_[i]));
            due_[i] &= due_[i] - 1;
            auto const gate = static_cast<NodeId>(i * 64 + bit);
            set(gate, value_of_gate(gate));
        }
    }
    first_due_ = due_.size();
    last_due_ = 0;
}

void Ripple::apply(std::span<std::pair<NodeId, Truth> const> changes) {
    for (auto const& [node, value] : changes) set(node, value);
    settle();
}

void Ripple::undo() {
    for (auto turn = turns_.rbegin(); turn != turns_.rend(); ++turn) {
        values_[turn->node] = turn->before;
        shift_bounds(turn->node, turn->after, turn->before);
    }
    turns_.clear();
}

}  // namespace asterism
