// SPDX-License-Identifier: MIT
#include "assess/ripple.h"

#include <random>

#include "testing.h"

using namespace asterism;

namespace {

/// A circuit of gates over random earlier nodes, negations and weights included.
Circuit random_circuit(std::mt19937& random) {
    Circuit circuit;
    for (int i = 0; i < 20; ++i) circuit.add_fact();
    for (int i = 0; i < 80; ++i) {
        std::vector<Weighted> inputs;
        for (auto k = 1 + random() % 5; k > 0; --k) {
            auto const node = static_cast<NodeId>(random() % circuit.size());
            inputs.push_back({{node, random() % 4 == 0}, 1 + static_cast<int>(random() % 3)});
        }
        circuit.add_gate(1 + static_cast<int>(random() % 4), std::move(inputs));
    }
    return circuit;
}

Truth random_truth(std::mt19937& random) { return static_cast<Truth>(random() % 3); }

}  // namespace

TEST_CASE("a ripple gives what evaluating everything gives") {
    std::mt19937 random(20260711);
    for (int turn = 0; turn < 300; ++turn) {
        auto const circuit = random_circuit(random);
        Ripple const ripple(circuit);
        std::vector<Truth> values(circuit.size());
        for (NodeId node = 0; node < 20; ++node) values[node] = random_truth(random);
        circuit.evaluate(values);
        for (int step = 0; step < 20; ++step) {
            std::vector<std::pair<NodeId, Truth>> changes;
            for (auto k = random() % 6; k > 0; --k)
                changes.emplace_back(static_cast<NodeId>(random() % 20), random_truth(random));
            auto expected = values;
            for (auto const& [node, value] : changes) expected[node] = value;
            circuit.evaluate(expected);
            ripple.apply(values, changes);
            CHECK(values == expected);
        }
    }
}
