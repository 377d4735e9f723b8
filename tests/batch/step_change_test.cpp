// SPDX-License-Identifier: MIT
/// A step's list of changes does to every node that does not hang on the step alone what setting
/// the step's facts one by one does, in the shipped book.
#include "testing.h"

#include "batch/change_lists.h"
#include "batch/fact_values.h"
#include "oracle/small_books.h"
#include "oracle/small_world.h"

namespace asterism::batch {

namespace {

using Values = std::vector<std::pair<NodeId, Truth>>;

/// The facts of a step's findings when the step differs from the start.
Values facts_of(FastBook const& book, std::size_t start, StepId step, Rest rest) {
    FastCase baby;
    baby.steps = book.steps(start);
    baby.steps.flip(step);
    OwnStates states(book);
    states.step(baby, step);
    std::vector<std::optional<Truth>> const tests(book.whole().measure_tests.size());
    FactValues const value(book, baby, states, tests, rest);
    Values values;
    for (auto const id : states.touched()) {
        for (auto const& fact : book.circuit().facts_of(id))
            values.emplace_back(fact.node, value.of_finding(id, fact));
    }
    return values;
}

/// Settles, notes the truth of every node that does not hang on the step alone, and resets.
std::vector<Truth> settled(FastCircuit const& circuit, FastRun& run, StepId step) {
    run.settle();
    std::vector<Truth> result;
    for (NodeId node = 0; node < circuit.size(); ++node) {
        if (circuit.step_of(node) != step) result.push_back(run.value(node));
    }
    run.reset();
    return result;
}

std::vector<Truth> truths(FastCircuit const& circuit, RunState& state) {
    FastRun run(circuit);
    run.begin(state);
    return settled(circuit, run, FastCircuit::no_step);
}

}  // namespace

TEST_CASE("a step's list of changes does what its facts do") {
    auto const book = FastBook::make(oracle::shipped_book().compiled);
    REQUIRE(book);
    auto const& circuit = book->circuit();
    ChangeLists lists;
    FastRun run(circuit);
    std::size_t changed = 0;
    for (std::size_t start = 0; start < FastBook::starts; ++start) {
        for (auto const rest : {Rest::unknown, Rest::normal}) {
            RunState state(book->snapshot(start, rest));
            auto const before = truths(circuit, state);
            run.begin(state);
            for (StepId step = 0; step < book->ontology().steps.size(); ++step) {
                auto const values = facts_of(*book, start, step, rest);
                for (auto const& [fact, value] : values) run.set(fact, value);
                auto const one_by_one = settled(circuit, run, step);
                auto const place = lists.add(step_change(circuit, state, step, values));
                lists.apply(place, run);
                CHECK(settled(circuit, run, step) == one_by_one);
                CHECK(lists.add(step_change(circuit, state, step, values)) == place);
                CHECK(truths(circuit, state) == before);
                changed += one_by_one != settled(circuit, run, step) ? 1u : 0u;
            }
        }
    }
    CHECK(changed > book->ontology().steps.size());
}

}  // namespace asterism::batch
