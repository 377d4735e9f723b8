// SPDX-License-Identifier: MIT
#pragma once

#include <span>
#include <utility>
#include <vector>

#include "compile/circuit.h"

namespace asterism {

/// Evaluates a circuit again after a few facts changed: only the gates that the change reaches.
/// The answer is that of `Circuit::evaluate`. The circuit must outlive it.
class Ripple {
public:
    explicit Ripple(Circuit const& circuit);

    /// `values` are evaluated already; `changes` are facts and their new values, the last of a
    /// fact counting.
    void apply(std::span<Truth> values, std::span<std::pair<NodeId, Truth> const> changes) const;

private:
    std::span<NodeId const> gates_over(NodeId node) const;

    Circuit const& circuit_;
    std::vector<std::uint32_t> begin_;  ///< by node: where its gates begin in `gates_`
    std::vector<NodeId> gates_;
};

}  // namespace asterism
