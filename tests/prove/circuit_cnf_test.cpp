// SPDX-License-Identifier: MIT
// The clauses of a circuit against its evaluation, on random circuits and random three-valued
// facts.
#include "review/sat/circuit_cnf.h"

#include <random>

#include "testing.h"

using namespace asterism;
using namespace asterism::sat;

namespace {

struct RandomCircuit {
    Circuit circuit;
    std::vector<NodeId> facts;
};

RandomCircuit random_circuit(std::mt19937_64& dice) {
    RandomCircuit result;
    std::vector<Literal> known;
    for (int i = 0; i < 8; ++i) {
        result.facts.push_back(result.circuit.add_fact());
        known.push_back({result.facts.back(), false});
    }
    for (int i = 0; i < 25; ++i) {
        std::vector<Weighted> inputs;
        for (std::size_t k = 0, n = 1 + dice() % 5; k < n; ++k) {
            auto literal = known[dice() % known.size()];
            literal.negated = literal.negated != (dice() % 3 == 0);
            inputs.push_back({literal, 1 + static_cast<std::int64_t>(dice() % 4)});
        }
        known.push_back(result.circuit.add_gate(static_cast<std::int64_t>(dice() % 9) - 1, inputs));
    }
    return result;
}

void force(TruthVars vars, Truth truth, std::vector<Lit>& assumptions) {
    assumptions.push_back(truth == Truth::yes ? vars.yes : -vars.yes);
    assumptions.push_back(truth == Truth::no ? -vars.possible : vars.possible);
}

}  // namespace

TEST_CASE("clauses and evaluation give every node the same truth") {
    std::mt19937_64 dice(19980715);
    for (int round = 0; round < 60; ++round) {
        auto const random = random_circuit(dice);
        Solver solver;
        std::vector<TruthVars> facts(random.circuit.size());
        for (auto const node : random.facts) facts[node] = add_truth(solver);
        CircuitCnf cnf(solver, random.circuit, facts);
        std::vector<TruthVars> all;
        for (NodeId node = 0; node < random.circuit.size(); ++node)
            all.push_back(cnf.at({node, false}));
        for (int trial = 0; trial < 40; ++trial) {
            std::vector<Truth> values(random.circuit.size(), Truth::no);
            std::vector<Lit> assumptions;
            for (auto const node : random.facts) {
                values[node] = static_cast<Truth>(dice() % 3);
                force(facts[node], values[node], assumptions);
            }
            random.circuit.evaluate(values);
            REQUIRE(solver.solve(assumptions, {}) == Answer::satisfiable);
            for (NodeId node = 0; node < values.size(); ++node) {
                CHECK(value_of(all[node], solver) == values[node]);
                CHECK(value_of(!all[node], solver) == !values[node]);
            }
        }
    }
}
