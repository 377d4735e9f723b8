// SPDX-License-Identifier: MIT
#include "compile/circuit.h"

#include "testing.h"

using namespace asterism;

namespace {

Truth evaluate(Circuit const& circuit, Literal literal, std::vector<Truth> facts) {
    facts.resize(circuit.size());
    circuit.evaluate(facts);
    return value_of(literal, facts);
}

constexpr Truth no = Truth::no, un = Truth::unknown, yes = Truth::yes;

}  // namespace

TEST_CASE("a gate of threshold n is Kleene's and, of threshold 1 Kleene's or") {
    Circuit circuit;
    Literal const a{circuit.add_fact(), false}, b{circuit.add_fact(), false};
    auto const both = circuit.add_gate(2, {{a, 1}, {b, 1}});
    auto const either = circuit.add_gate(1, {{a, 1}, {b, 1}});
    for (auto const x : {no, un, yes}) {
        for (auto const y : {no, un, yes}) {
            CHECK(evaluate(circuit, both, {x, y}) == (x & y));
            CHECK(evaluate(circuit, either, {x, y}) == (x | y));
            CHECK(evaluate(circuit, !both, {x, y}) == !(x & y));
        }
    }
}

TEST_CASE("at least two of three knows as soon as it can") {
    Circuit circuit;
    std::vector<Weighted> inputs;
    for (int i = 0; i < 3; ++i) inputs.push_back({{circuit.add_fact(), false}, 1});
    auto const two = circuit.add_gate(2, inputs);
    CHECK(evaluate(circuit, two, {yes, un, yes}) == yes);
    CHECK(evaluate(circuit, two, {no, un, no}) == no);
    CHECK(evaluate(circuit, two, {yes, un, no}) == un);
    CHECK(evaluate(circuit, two, {un, un, yes}) == un);
}

TEST_CASE("weights add up; equal inputs merge; equal gates are one node") {
    Circuit circuit;
    Literal const a{circuit.add_fact(), false}, b{circuit.add_fact(), false};
    auto const score = circuit.add_gate(25, {{a, 10}, {b, 15}});
    CHECK(evaluate(circuit, score, {yes, yes}) == yes);
    CHECK(evaluate(circuit, score, {yes, no}) == no);
    CHECK(evaluate(circuit, score, {yes, un}) == un);
    CHECK(circuit.add_gate(25, {{b, 15}, {a, 10}}).node == score.node);
    auto const twice = circuit.add_gate(2, {{a, 1}, {a, 1}});
    CHECK(twice.node == a.node);
}

TEST_CASE("held nodes keep their truth") {
    Circuit circuit;
    Literal const a{circuit.add_fact(), false}, b{circuit.add_fact(), false};
    auto const inner = circuit.add_gate(1, {{a, 1}, {b, 1}});
    auto const outer = circuit.add_gate(2, {{inner, 1}, {b, 1}});
    std::vector<Truth> values(circuit.size(), un);
    std::vector<std::pair<NodeId, Truth>> const held{{inner.node, no}};
    circuit.evaluate(values, held);
    CHECK(value_of(outer, values) == no);
}

TEST_CASE("learning more never flips a gate, whatever the weights and threshold") {
    for (std::int64_t threshold = 1; threshold <= 4; ++threshold) {
        Circuit circuit;
        Literal const a{circuit.add_fact(), false}, b{circuit.add_fact(), false},
            c{circuit.add_fact(), false};
        auto const gate = circuit.add_gate(threshold, {{a, 1}, {!b, 2}, {c, 1}});
        for (int code = 0; code < 27; ++code) {
            std::vector<Truth> facts{static_cast<Truth>(code % 3), static_cast<Truth>(code / 3 % 3),
                                     static_cast<Truth>(code / 9)};
            auto const before = evaluate(circuit, gate, facts);
            if (before == un) continue;
            for (auto& fact : facts) {
                if (fact != un) continue;
                for (auto const learnt : {no, yes}) {
                    fact = learnt;
                    CHECK(evaluate(circuit, gate, facts) == before);
                }
                fact = un;
            }
        }
    }
}
