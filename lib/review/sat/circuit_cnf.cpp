// SPDX-License-Identifier: MIT
#include "review/sat/circuit_cnf.h"

#include "review/sat/totalizer.h"

namespace asterism::sat {

TruthVars add_truth(Solver& solver) {
    TruthVars const truth{solver.add_variable(), solver.add_variable()};
    solver.add_clause({-truth.yes, truth.possible});
    return truth;
}

Truth value_of(TruthVars truth, Solver const& solver) {
    if (solver.value(truth.yes)) return Truth::yes;
    return solver.value(truth.possible) ? Truth::unknown : Truth::no;
}

TruthVars CircuitCnf::node(NodeId node) {
    if (vars_[node].yes == 0) write(node);
    return vars_[node];
}

void CircuitCnf::write(NodeId node) {
    std::vector<WeightedLit> yes;
    std::vector<WeightedLit> possible;
    for (auto const& [literal, weight] : circuit_.inputs(node)) {
        auto const input = at(literal);
        yes.push_back({input.yes, weight});
        possible.push_back({input.possible, weight});
    }
    auto const threshold = circuit_.threshold(node);
    vars_[node] = {at_least(solver_, threshold, std::move(yes)),
                   at_least(solver_, threshold, std::move(possible))};
    solver_.prefer(-vars_[node].yes);
    solver_.prefer(vars_[node].possible);
}

}  // namespace asterism::sat
