// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <span>
#include <unordered_map>
#include <utility>
#include <vector>

#include "base/truth.h"
#include "conditions/literal.h"

namespace asterism {

/// The whole book as one three-valued threshold circuit: facts and gates in an order in which every
/// gate stands after its inputs, so that one pass over the nodes evaluates everything. Immutable
/// once built.
///
/// A gate is `yes` when the weights of its `yes` inputs reach its threshold, `no` when the weights
/// of all inputs that are not `no` do not, else `unknown`. With weights 1 this is Kleene's `and`
/// (threshold n), `or` (threshold 1), and "at least k of n".
class Circuit {
public:
    NodeId add_fact();
    /// Equal gates are one node; a gate over one input that alone reaches the threshold is that
    /// input.
    Literal add_gate(std::int64_t threshold, std::vector<Weighted> inputs);

    std::size_t size() const { return gates_.size(); }
    bool is_fact(NodeId node) const { return gates_[node].threshold == fact_mark; }
    std::int64_t threshold(NodeId node) const { return gates_[node].threshold; }
    std::span<Weighted const> inputs(NodeId node) const;

    /// Fills in every gate; `values` holds one truth a node, with the facts already set.
    void evaluate(std::span<Truth> values) const;
    /// The same with some nodes, facts or gates, held at a given truth.
    void evaluate(std::span<Truth> values, std::span<std::pair<NodeId, Truth> const> held) const;

private:
    static constexpr std::int64_t fact_mark = INT64_MIN;

    struct Gate {
        std::int64_t threshold = fact_mark;
        std::uint32_t begin = 0;
        std::uint32_t end = 0;
    };

    template <class Archive>
    friend void serialize(Archive& archive, Gate& gate) {
        auto& [threshold, begin, end] = gate;
        archive(threshold, begin, end);
    }
    /// Members in their order, for an image; `known_` follows from the gates.
    template <class Archive>
    friend void serialize(Archive& archive, Circuit& circuit) {
        auto& [gates, inputs, known, indexed] = circuit;
        static_cast<void>(known), static_cast<void>(indexed);
        archive(gates, inputs);
    }

    /// Brings `known_` up to date: a circuit that came from an image starts without it.
    void index_gates();
    Truth evaluate(Gate const& gate, std::span<Truth const> values) const;
    NodeId find_equal(std::int64_t threshold, std::vector<Weighted> const& inputs,
                      std::size_t hash) const;

    std::vector<Gate> gates_;
    std::vector<Weighted> inputs_;
    std::unordered_multimap<std::size_t, NodeId> known_;  ///< gates by hash
    std::size_t indexed_ = 0;                             ///< so many nodes have been entered there
};

inline Truth value_of(Literal literal, std::span<Truth const> values) {
    return literal.negated ? !values[literal.node] : values[literal.node];
}

/// What a weighted sum is known to be: at least `low` (true inputs), at most `high` (inputs not
/// false).
struct Bounds {
    std::int64_t low = 0;
    std::int64_t high = 0;
};

Bounds sum(std::span<Weighted const> inputs, std::span<Truth const> values);

}  // namespace asterism
