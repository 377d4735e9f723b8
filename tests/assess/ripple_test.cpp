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

/// Changes of a few facts.
std::vector<std::pair<NodeId, Truth>> random_changes(std::mt19937& random) {
    std::vector<std::pair<NodeId, Truth>> changes;
    for (auto k = random() % 6; k > 0; --k)
        changes.emplace_back(static_cast<NodeId>(random() % 20), random_truth(random));
    return changes;
}

std::vector<Truth> evaluated(Circuit const& circuit, std::vector<Truth> values,
                             std::vector<std::pair<NodeId, Truth>> const& changes) {
    for (auto const& [node, value] : changes) values[node] = value;
    circuit.evaluate(values);
    return values;
}

}  // namespace

TEST_CASE("a ripple gives what evaluating everything gives, and everything back") {
    std::mt19937 random(20260711);
    for (int turn = 0; turn < 300; ++turn) {
        auto const circuit = random_circuit(random);
        std::vector<Truth> start(circuit.size());
        for (NodeId node = 0; node < 20; ++node) start[node] = random_truth(random);
        circuit.evaluate(start);
        Ripple ripple(circuit, start);
        for (int step = 0; step < 20; ++step) {
            auto expected = start;
            for (auto more = 1 + random() % 3; more > 0; --more) {
                auto const changes = random_changes(random);
                expected = evaluated(circuit, expected, changes);
                ripple.apply(changes);
                CHECK(ripple.values() == expected);
            }
            ripple.undo();
            CHECK(ripple.values() == start);
            CHECK(ripple.turns().empty());
        }
    }
}
