// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>

namespace asterism {

/// A place in the compiled book that has a truth value: a fact, or a gate over other nodes.
using NodeId = std::uint32_t;

/// A node or its negation.
struct Literal {
    NodeId node = 0;
    bool negated = false;

    Literal operator!() const { return {node, !negated}; }
    friend auto operator<=>(Literal const&, Literal const&) = default;
};

/// An input of a gate. Weights are positive; a gate holds when the weights of its true inputs reach
/// its threshold.
struct Weighted {
    Literal literal;
    std::int64_t weight = 1;

    friend auto operator<=>(Weighted const&, Weighted const&) = default;
};

}  // namespace asterism
