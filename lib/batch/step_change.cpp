// SPDX-License-Identifier: MIT
#include "batch/step_change.h"

#include <algorithm>

namespace asterism::batch {

namespace {

/// Changes run through the step's own nodes and stop at all others; in the end all is taken back.
class Trial {
public:
    Trial(FastCircuit const& circuit, RunState& start, StepId step)
        : circuit_(circuit), nodes_(start.nodes), step_(step) {}
    ~Trial() {
        for (auto change = log_.rbegin(); change != log_.rend(); ++change)
            nodes_[change->first] = change->second;
    }
    Trial(Trial const&) = delete;
    Trial& operator=(Trial const&) = delete;

    bool own(NodeId node) const { return circuit_.step_of(node) == step_; }

    void change(NodeId node, Truth value) {
        Turn const turn(nodes_[node].value(), value);
        if (!turn.any()) return;
        log_.emplace_back(node, nodes_[node]);
        nodes_[node].set_value(value);
        for (auto const& pair : circuit_.edges(node)) {
            for (auto const& edge : pair) pass(turn, edge);
        }
    }

    void pass(Turn const& turn, Edge const& edge) {
        if (edge.gate == circuit_.nowhere()) return;
        log_.emplace_back(edge.gate, nodes_[edge.gate]);
        nodes_[edge.gate].add(turn.along(edge));
        if (!own(edge.gate)) reached_.emplace_back(edge.gate, turn.along(edge));
    }

    void settle() {
        for (auto const gate : circuit_.own_gates(step_))
            change(gate, nodes_[gate].margin().truth());
    }

    /// What is added to each gate that is not the step's own, in order.
    std::vector<std::pair<NodeId, Margin>> reached() {
        std::stable_sort(reached_.begin(), reached_.end(),
                         [](auto const& a, auto const& b) { return a.first < b.first; });
        std::vector<std::pair<NodeId, Margin>> result;
        for (auto const& [gate, added] : reached_) {
            if (result.empty() || result.back().first != gate) result.emplace_back(gate, Margin{});
            result.back().second += added;
        }
        std::erase_if(result, [](auto const& one) { return one.second == Margin{}; });
        return result;
    }

private:
    FastCircuit const& circuit_;
    std::vector<NodeState>& nodes_;
    StepId step_;
    std::vector<std::pair<NodeId, NodeState>> log_;
    std::vector<std::pair<NodeId, Margin>> reached_;
};

}  // namespace

StepChange step_change(FastCircuit const& circuit, RunState& start, StepId step,
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
