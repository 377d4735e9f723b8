// SPDX-License-Identifier: MIT
#include "batch/step_change.h"

#include <algorithm>

namespace asterism::batch {

namespace {

/// A copy of the start in which changes run through the step's own nodes and stop at all others.
class Trial {
public:
    Trial(FastCircuit const& circuit, RunState const& start, StepId step)
        : circuit_(circuit), start_(start), nodes_(start.nodes), step_(step) {}

    bool own(NodeId node) const { return circuit_.step_of(node) == step_; }

    void change(NodeId node, Truth value) {
        Turn const turn(nodes_[node].value(), value);
        if (!turn.any()) return;
        nodes_[node].set_value(value);
        for (auto const& pair : circuit_.edges(node)) {
            for (auto const& edge : pair) pass(turn, edge);
        }
    }

    void pass(Turn const& turn, Edge const& edge) {
        nodes_[edge.gate].add(turn.along(edge));
        if (edge.gate != circuit_.nowhere() && !own(edge.gate)) reached_.push_back(edge.gate);
    }

    void settle() {
        for (auto const gate : circuit_.own_gates(step_))
            change(gate, nodes_[gate].margin().truth());
    }

    std::vector<std::pair<NodeId, Margin>> reached() {
        std::sort(reached_.begin(), reached_.end());
        reached_.erase(std::unique(reached_.begin(), reached_.end()), reached_.end());
        std::vector<std::pair<NodeId, Margin>> result;
        for (auto const gate : reached_) {
            auto const added = nodes_[gate].margin() - start_.nodes[gate].margin();
            if (added != Margin{}) result.emplace_back(gate, added);
        }
        return result;
    }

private:
    FastCircuit const& circuit_;
    RunState const& start_;
    std::vector<NodeState> nodes_;
    StepId step_;
    std::vector<NodeId> reached_;
};

}  // namespace

StepChange step_change(FastCircuit const& circuit, RunState const& start, StepId step,
                       std::vector<std::pair<NodeId, Truth>> const& values) {
    StepChange result;
    Trial trial(circuit, start, step);
    for (auto const& [fact, value] : values) {
        if (trial.own(fact))
            trial.change(fact, value);
        else if (start.nodes[fact].value() != value)
            result.facts.emplace_back(fact, value);
    }
    trial.settle();
    result.gates = trial.reached();
    return result;
}

}  // namespace asterism::batch
