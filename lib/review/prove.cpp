// SPDX-License-Identifier: MIT
#include "review/prove.h"

#include "cases/read_case.h"
#include "review/prove_case.h"
#include "review/prove_question.h"

namespace asterism {

namespace {

using Clock = std::chrono::steady_clock;

/// Models that no case makes, or that the engine does not find broken, before the search is given
/// up.
constexpr int most_tries = 200;

class Prover {
public:
    Prover(Promises const& promises, CompiledPromise const& promise, sat::Limits const& limits)
        : promises_(promises),
          promise_(promise),
          limits_(limits),
          start_(Clock::now()),
          question_(solver_, promises, promise) {}

    Proof run() {
        auto const& syntax = promises_.syntax(promise_);
        proof_.id = syntax.id.text;
        proof_.because = syntax.because;
        proof_.place = syntax.id.span;
        search();
        proof_.time = elapsed();
        return std::move(proof_);
    }

private:
    std::chrono::milliseconds elapsed() const {
        return std::chrono::duration_cast<std::chrono::milliseconds>(Clock::now() - start_);
    }

    void search() {
        for (int tries = 0; tries < most_tries; ++tries) {
            auto rest = limits_;
            rest.time -= elapsed();
            auto const answer = solver_.solve({}, rest);
            if (answer == sat::Answer::undecided) return not_proven("the limit was reached");
            if (answer == sat::Answer::unsatisfiable) return no_model();
            std::vector<sat::Lit> blocked;
            auto const baby = question_.babies().realise(blocked);
            if (!baby) {
                solver_.add_clause(blocked);
                skipped_measures_ = true;
            } else if (breaks(*baby)) {
                return report(*baby);
            } else {
                leave_out();
            }
        }
        not_proven("every baby found so far turned out not to break it");
    }

    void no_model() {
        if (narrowed_)
            return not_proven("it holds wherever no count hangs on something not examined");
        if (skipped_measures_)
            return not_proven("for some combinations of measures no values were found");
        proof_.result = ProofResult::holds;
    }

    void not_proven(std::string why) {
        proof_.result = ProofResult::not_proven;
        proof_.why_not = std::move(why);
    }

    bool breaks(Case const& baby) const {
        std::string finding;
        return !broken_by(promises_, promise_, baby, finding).empty();
    }

    /// The engine says more than single rules do: that is left out once, and this one model always.
    void leave_out() {
        std::vector<sat::Lit> clause;
        for (auto const& [key, truth] : question_.babies().facts()) {
            clause.push_back(solver_.value(truth.yes) ? -truth.yes : truth.yes);
            clause.push_back(solver_.value(truth.possible) ? -truth.possible : truth.possible);
        }
        solver_.add_clause(clause);
        if (!narrowed_) question_.leave_open_counts_out();
        narrowed_ = true;
    }

    /// Only what still breaks the promise after being written and read again is reported.
    bool breaks_in_writing(Case const& baby) const {
        Diagnostics diagnostics;
        auto const& ontology = *promises_.book.ontology;
        auto const text = case_yaml(baby, ontology);
        auto const read =
            read_case(make_source("counterexample.yaml", text), ontology, diagnostics);
        return !diagnostics.has_errors() && breaks(read);
    }

    void report(Case const& found) {
        auto const wanted = [this](Case const& baby) { return breaks_in_writing(baby); };
        if (!wanted(found)) return not_proven("a baby was found that cannot be written as a case");
        auto baby = smallest(found, wanted);
        baby.id.text = "breaks-" + proof_.id;
        proof_.result = ProofResult::broken;
        proof_.said = broken_by(promises_, promise_, baby, proof_.finding);
        proof_.case_text = case_yaml(baby, *promises_.book.ontology);
        proof_.counterexample = std::move(baby);
    }

    Promises const& promises_;
    CompiledPromise const& promise_;
    sat::Limits limits_;
    Clock::time_point start_;
    sat::Solver solver_;
    PromiseQuestion question_;
    bool narrowed_ = false;
    bool skipped_measures_ = false;
    Proof proof_;
};

}  // namespace

std::string_view to_text(ProofResult result) {
    switch (result) {
        case ProofResult::holds: return "holds";
        case ProofResult::broken: return "broken";
        case ProofResult::not_proven: return "not-proven";
    }
    return "";
}

Proof prove(Promises const& promises, CompiledPromise const& promise, sat::Limits const& limits) {
    return Prover(promises, promise, limits).run();
}

}  // namespace asterism
