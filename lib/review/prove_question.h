// SPDX-License-Identifier: MIT
#pragma once

#include "review/promise.h"
#include "review/sat/babies.h"

namespace asterism {

/// A promise turned round: the clauses of a baby that breaks it. No model means that it holds.
class PromiseQuestion {
public:
    PromiseQuestion(sat::Solver& solver, Promises const& promises, CompiledPromise const& promise);

    sat::Babies const& babies() const { return babies_; }
    /// Leaves out babies of whom a count hangs on something unknown: there the engine may suggest
    /// more than single rules do.
    void leave_open_counts_out();

private:
    using Lit = sat::Lit;

    void choose_finding();
    void nothing_beside();
    void run_in_family();
    void add_finding();
    void add_fact_of_finding(Fact const& fact, std::vector<sat::TruthVars>& facts);
    std::size_t position(FindingId finding) const;

    std::vector<Lit> rules_reaching(std::vector<ServiceId> const& services, Urgency urgency,
                                    sat::CircuitCnf& circuit);
    Lit broken(CompiledOutcome const& outcome);
    Lit lowered(std::vector<std::vector<ServiceId>> const& groups);

    sat::Solver& solver_;
    CompiledRulebook const& book_;
    CompiledPromise const& promise_;
    PromiseSyntax const& syntax_;
    sat::Babies babies_;
    sat::CircuitCnf circuit_;
    std::optional<sat::CircuitCnf> after_;
    std::vector<Lit> chosen_;  ///< one a finding of the promise: this is the one it is about
};

}  // namespace asterism
