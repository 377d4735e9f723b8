// SPDX-License-Identifier: MIT
#pragma once

#include <memory>
#include <span>
#include <utility>
#include <vector>

#include "assess/grouped.h"
#include "compile/circuit.h"

namespace asterism {

/// A circuit that was evaluated, in which facts are changed and put back: only gates over what
/// really turns are looked at, and each is told by how much, so that no gate is summed again.
class Ripple {
public:
    /// `values` are evaluated already.
    Ripple(Circuit const& circuit, std::vector<Truth> values);
    /// Over the circuit of another, whose wires it shares.
    Ripple(Ripple const& other, std::vector<Truth> values);

    /// Gives facts new values, the last of a fact counting. Changes add up until `undo`.
    void apply(std::span<std::pair<NodeId, Truth> const> changes);
    /// Puts everything back as it was at the start.
    void undo();

    std::vector<Truth> const& values() const { return values_; }

    struct Turn {
        NodeId node = 0;
        Truth before = Truth::no;
        Truth after = Truth::no;
    };
    /// What turned since the start, in order.
    std::vector<Turn> const& turns() const { return turns_; }

private:
    /// A way from a node into a gate.
    struct Wire {
        NodeId gate = 0;
        bool negated = false;
        std::int64_t weight = 1;
    };

    /// By the node from which they come.
    using Wires = Grouped<Wire>;

    static std::shared_ptr<Wires const> wires(Circuit const& circuit);
    Ripple(Circuit const& circuit, std::shared_ptr<Wires const> wires, std::vector<Truth> values);
    void set(NodeId node, Truth value);
    void shift_bounds(NodeId node, Truth before, Truth after);
    void call_gates(NodeId node);
    void settle();
    Truth value_of_gate(NodeId gate) const;

    Circuit const& circuit_;
    std::vector<Truth> values_;
    std::shared_ptr<Wires const> wires_;
    std::vector<Bounds> bounds_;      ///< by node: what the inputs of a gate add up to
    std::vector<std::uint64_t> due_;  ///< a bit a node: gates that were told of a change
    std::size_t first_due_ = 0;       ///< no word of `due_` before this one has a bit
    std::size_t last_due_ = 0;        ///< nor any behind this one
    std::vector<Turn> turns_;
};

}  // namespace asterism
