// SPDX-License-Identifier: MIT
// The counting clauses against counting, for every setting of the inputs.
#include "review/sat/totalizer.h"

#include <random>

#include "testing.h"

using namespace asterism::sat;

namespace {

/// The first setting (as bits) for which the clauses and the sum disagree; -1 when there is none.
int disagreement(std::vector<std::int64_t> const& weights, std::int64_t threshold) {
    Solver solver;
    std::vector<WeightedLit> inputs;
    for (auto const weight : weights) inputs.push_back({solver.add_variable(), weight});
    auto const reached = at_least(solver, threshold, inputs);
    for (int bits = 0; bits < 1 << weights.size(); ++bits) {
        std::int64_t sum = 0;
        std::vector<Lit> assumptions;
        for (std::size_t i = 0; i < weights.size(); ++i) {
            bool const on = (bits >> i & 1) != 0;
            assumptions.push_back(on ? inputs[i].literal : -inputs[i].literal);
            if (on) sum += weights[i];
        }
        if (solver.solve(assumptions, {}) != Answer::satisfiable) return bits;
        if (solver.value(reached) != (sum >= threshold)) return bits;
        // And the other value is impossible, not merely unchosen.
        assumptions.push_back(sum >= threshold ? -reached : reached);
        if (solver.solve(assumptions, {}) != Answer::unsatisfiable) return bits;
    }
    return -1;
}

}  // namespace

TEST_CASE("a threshold over weights is true exactly when the sum reaches it") {
    std::mt19937_64 dice(20310402);
    for (int round = 0; round < 120; ++round) {
        std::vector<std::int64_t> weights;
        for (std::size_t i = 0, n = 1 + dice() % 7; i < n; ++i)
            weights.push_back(1 + static_cast<std::int64_t>(dice() % (round % 2 ? 1 : 6)));
        auto const threshold = static_cast<std::int64_t>(dice() % 14) - 1;
        CAPTURE(round);
        CAPTURE(threshold);
        CHECK(disagreement(weights, threshold) == -1);
    }
}

TEST_CASE("weights in tenths are divided by what they share") {
    CHECK(disagreement({10, 10, 10, 20, 10}, 25) == -1);
    CHECK(disagreement({10, 5, 15, 10}, 20) == -1);
}

TEST_CASE("a question that takes too long is left undecided") {
    Solver solver;
    // Twelve pigeons, eleven holes: no short proof by resolution (Haken 1985; from memory).
    constexpr int holes = 11;
    std::vector<std::vector<Lit>> sits(holes + 1);
    for (auto& pigeon : sits) {
        for (int hole = 0; hole < holes; ++hole) pigeon.push_back(solver.add_variable());
        solver.add_clause(pigeon);
    }
    for (int hole = 0; hole < holes; ++hole) {
        for (std::size_t a = 0; a < sits.size(); ++a) {
            for (std::size_t b = 0; b < a; ++b)
                solver.add_clause({-sits[a][static_cast<std::size_t>(hole)],
                                   -sits[b][static_cast<std::size_t>(hole)]});
        }
    }
    CHECK(solver.solve({}, {100, std::chrono::milliseconds(5000)}) == Answer::undecided);
    CHECK(solver.solve({}, {1'000'000'000, std::chrono::milliseconds(50)}) == Answer::undecided);
}
