// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "compile/circuit.h"
#include "review/sat/solver.h"

namespace asterism::sat {

/// A three-valued truth as two literals: known to be yes, and not known to be no. `yes` implies
/// `possible`; unknown is possible without being yes.
struct TruthVars {
    Lit yes = 0;
    Lit possible = 0;

    TruthVars operator!() const { return {-possible, -yes}; }
    Lit no() const { return -possible; }
};

/// Fresh variables for a truth.
TruthVars add_truth(Solver& solver);
Truth value_of(TruthVars truth, Solver const& solver);

/// A circuit as clauses: a gate is yes when the weights of its yes inputs reach the threshold, and
/// possible when those of its possible inputs do, exactly as `Circuit::evaluate` has it. Gates are
/// written when they are asked for, so that a question pays for its own part of the book only. The
/// circuit must outlive this.
class CircuitCnf {
public:
    /// `facts` holds the truths of the circuit's facts, by node; those of gates are ignored.
    CircuitCnf(Solver& solver, Circuit const& circuit, std::vector<TruthVars> facts)
        : solver_(solver), circuit_(circuit), vars_(std::move(facts)) {
        for (NodeId node = 0; node < vars_.size(); ++node) {
            if (!circuit_.is_fact(node)) vars_[node] = {};
        }
    }

    TruthVars at(Literal literal) {
        auto const vars = node(literal.node);
        return literal.negated ? !vars : vars;
    }

private:
    TruthVars node(NodeId node);
    void write(NodeId node);

    Solver& solver_;
    Circuit const& circuit_;
    std::vector<TruthVars> vars_;
};

}  // namespace asterism::sat
