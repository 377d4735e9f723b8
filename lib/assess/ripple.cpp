// SPDX-License-Identifier: MIT
#include "assess/ripple.h"

#include <bit>

namespace asterism {

namespace {

/// Gates to look at again, taken out in ascending order while more are put in above.
class Agenda {
public:
    explicit Agenda(std::size_t nodes) : words_(nodes / 64 + 1) {}

    void add(std::span<NodeId const> nodes) {
        for (auto const node : nodes) words_[node / 64] |= std::uint64_t{1} << node % 64;
    }
    /// Calls `visit` with each node; what it adds stands above that node.
    template <class Visit>
    void run(Visit visit) {
        for (std::size_t i = 0; i < words_.size(); ++i) {
            while (words_[i] != 0) {
                auto const bit = static_cast<std::size_t>(std::countr_zero(words_[i]));
                words_[i] &= words_[i] - 1;
                visit(static_cast<NodeId>(i * 64 + bit));
            }
        }
    }

private:
    std::vector<std::uint64_t> words_;
};

Truth value_of_gate(Circuit const& circuit, NodeId gate, std::span<Truth const> values) {
    auto const bounds = sum(circuit.inputs(gate), values);
    if (bounds.low >= circuit.threshold(gate)) return Truth::yes;
    return bounds.high >= circuit.threshold(gate) ? Truth::unknown : Truth::no;
}

/// Calls `visit(input, gate)` for every wire of the circuit.
template <class Visit>
void each_wire(Circuit const& circuit, Visit visit) {
    for (NodeId gate = 0; gate < circuit.size(); ++gate) {
        if (circuit.is_fact(gate)) continue;
        for (auto const& input : circuit.inputs(gate)) visit(input.literal.node, gate);
    }
}

}  // namespace

Ripple::Ripple(Circuit const& circuit) : circuit_(circuit), begin_(circuit.size() + 1) {
    each_wire(circuit, [&](NodeId input, NodeId) { ++begin_[input + 1]; });
    for (std::size_t node = 0; node < circuit.size(); ++node) begin_[node + 1] += begin_[node];
    gates_.resize(begin_.back());
    auto next = begin_;
    each_wire(circuit, [&](NodeId input, NodeId gate) { gates_[next[input]++] = gate; });
}

std::span<NodeId const> Ripple::gates_over(NodeId node) const {
    return std::span(gates_).subspan(begin_[node], begin_[node + 1] - begin_[node]);
}

void Ripple::apply(std::span<Truth> values,
                   std::span<std::pair<NodeId, Truth> const> changes) const {
    Agenda agenda(circuit_.size());
    auto const set = [&](NodeId node, Truth value) {
        if (values[node] == value) return;
        values[node] = value;
        agenda.add(gates_over(node));
    };
    for (auto const& [node, value] : changes) set(node, value);
    agenda.run([&](NodeId gate) { set(gate, value_of_gate(circuit_, gate, values)); });
}

}  // namespace asterism
