// SPDX-License-Identifier: MIT
#include "compile/circuit.h"

#include <algorithm>
#include <limits>

namespace asterism {

namespace {

constexpr NodeId no_node = std::numeric_limits<NodeId>::max();

/// Sorts the inputs and adds up the weights of equal ones.
std::vector<Weighted> merged(std::vector<Weighted> inputs) {
    std::sort(inputs.begin(), inputs.end());
    std::vector<Weighted> result;
    for (auto const& input : inputs) {
        if (!result.empty() && result.back().literal == input.literal) {
            result.back().weight += input.weight;
        } else {
            result.push_back(input);
        }
    }
    return result;
}

std::size_t hash_of(std::int64_t threshold, std::span<Weighted const> inputs) {
    auto hash = static_cast<std::size_t>(threshold);
    for (auto const& [literal, weight] : inputs) {
        hash = hash * 1000003u ^ (literal.node * 2u + (literal.negated ? 1u : 0u));
        hash = hash * 1000003u ^ static_cast<std::size_t>(weight);
    }
    return hash;
}

}  // namespace

NodeId Circuit::add_fact() {
    gates_.emplace_back();
    return static_cast<NodeId>(gates_.size() - 1);
}

Literal Circuit::add_gate(std::int64_t threshold, std::vector<Weighted> inputs) {
    inputs = merged(std::move(inputs));
    if (inputs.size() == 1 && threshold > 0 && inputs.front().weight >= threshold)
        return inputs.front().literal;
    index_gates();
    auto const hash = hash_of(threshold, inputs);
    if (auto const node = find_equal(threshold, inputs, hash); node != no_node)
        return {node, false};
    Gate gate{threshold, static_cast<std::uint32_t>(inputs_.size()), 0};
    inputs_.insert(inputs_.end(), inputs.begin(), inputs.end());
    gate.end = static_cast<std::uint32_t>(inputs_.size());
    gates_.push_back(gate);
    auto const node = static_cast<NodeId>(gates_.size() - 1);
    return {node, false};
}

void Circuit::index_gates() {
    for (; indexed_ < gates_.size(); ++indexed_) {
        auto const node = static_cast<NodeId>(indexed_);
        if (is_fact(node)) continue;
        known_.emplace(hash_of(gates_[node].threshold, inputs(node)), node);
    }
}

NodeId Circuit::find_equal(std::int64_t threshold, std::vector<Weighted> const& wanted,
                           std::size_t hash) const {
    auto const [first, last] = known_.equal_range(hash);
    for (auto it = first; it != last; ++it) {
        auto const have = inputs(it->second);
        if (gates_[it->second].threshold == threshold &&
            std::equal(have.begin(), have.end(), wanted.begin(), wanted.end()))
            return it->second;
    }
    return no_node;
}

std::span<Weighted const> Circuit::inputs(NodeId node) const {
    auto const& gate = gates_[node];
    return std::span(inputs_).subspan(gate.begin, gate.end - gate.begin);
}

void Circuit::evaluate(std::span<Truth> values) const {
    for (std::size_t node = 0; node < gates_.size(); ++node) {
        if (gates_[node].threshold != fact_mark) values[node] = evaluate(gates_[node], values);
    }
}

void Circuit::evaluate(std::span<Truth> values,
                       std::span<std::pair<NodeId, Truth> const> held) const {
    for (auto const& [node, value] : held) values[node] = value;
    auto const is_held = [&](std::size_t node) {
        return std::any_of(held.begin(), held.end(),
                           [&](auto const& h) { return h.first == node; });
    };
    for (std::size_t node = 0; node < gates_.size(); ++node) {
        if (gates_[node].threshold != fact_mark && !is_held(node))
            values[node] = evaluate(gates_[node], values);
    }
}

Truth Circuit::evaluate(Gate const& gate, std::span<Truth const> values) const {
    auto const bounds = sum(std::span(inputs_).subspan(gate.begin, gate.end - gate.begin), values);
    if (bounds.low >= gate.threshold) return Truth::yes;
    return bounds.high >= gate.threshold ? Truth::unknown : Truth::no;
}

Bounds sum(std::span<Weighted const> inputs, std::span<Truth const> values) {
    Bounds bounds;
    for (auto const& [literal, weight] : inputs) {
        auto const value = value_of(literal, values);
        if (value == Truth::yes) bounds.low += weight;
        if (value != Truth::no) bounds.high += weight;
    }
    return bounds;
}

}  // namespace asterism
