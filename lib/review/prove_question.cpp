// SPDX-License-Identifier: MIT
#include "review/prove_question.h"

#include <algorithm>

#include "assess/verdicts.h"
#include "review/sat/totalizer.h"

namespace asterism {

using sat::Lit;

PromiseQuestion::PromiseQuestion(sat::Solver& solver, Promises const& promises,
                                 CompiledPromise const& promise)
    : solver_(solver),
      book_(promises.book),
      promise_(promise),
      syntax_(promises.syntax(promise)),
      babies_(solver, {&promises.book}),
      circuit_(babies_.circuit(promises.book)) {
    if (promise.when) solver_.add_clause({circuit_.at(*promise.when).yes});
    if (!promise.findings.empty()) choose_finding();
    if (promise.adding) add_finding();
    if (syntax_.alone) nothing_beside();
    if (syntax_.familial) run_in_family();
    std::vector<Lit> some;
    for (auto const& outcome : promise.then) some.push_back(broken(outcome));
    solver_.add_clause(some);
}

void PromiseQuestion::choose_finding() {
    std::vector<sat::WeightedLit> inputs;
    for (auto const id : promise_.findings) {
        chosen_.push_back(solver_.add_variable());
        inputs.push_back({chosen_.back(), 1});
        if (!promise_.adding)
            solver_.add_clause({-chosen_.back(), circuit_.at(book_.present[id]).yes});
    }
    solver_.add_clause({sat::at_least(solver_, 1, inputs)});
    solver_.add_clause({-sat::at_least(solver_, 2, inputs)});
    for (auto const literal : chosen_) solver_.prefer(-literal);
}

std::size_t PromiseQuestion::position(FindingId finding) const {
    auto const& all = promise_.findings;
    return static_cast<std::size_t>(std::find(all.begin(), all.end(), finding) - all.begin());
}

/// Whatever is known to be present is the chosen finding or an ancestor of it; no rule's own
/// measure is past a cut-off.
void PromiseQuestion::nothing_beside() {
    for (FindingId id = 0; id < book_.present.size(); ++id) {
        std::vector<Lit> clause{-circuit_.at(book_.present[id]).yes};
        auto because_of = book_.ontology->descendants(id);
        because_of.push_back(id);
        for (auto const other : because_of) {
            if (auto const at = position(other); at < chosen_.size()) clause.push_back(chosen_[at]);
        }
        solver_.add_clause(clause);
    }
    for (auto const& [key, truth] : babies_.facts()) {
        if (key.kind == Fact::Kind::measure) solver_.add_clause({-truth.yes});
    }
}

void PromiseQuestion::run_in_family() {
    for (std::size_t i = 0; i < chosen_.size(); ++i) {
        auto const familial = babies_.fact({Fact::Kind::familial, promise_.findings[i], 0, {}, {}});
        solver_.add_clause({-chosen_[i], familial.yes});
    }
}

/// A second circuit over the same baby, but for what is said of the chosen finding: stated present,
/// nothing more. `with_finding` does the same to a case.
void PromiseQuestion::add_finding() {
    auto facts = babies_.by_node(book_);
    for (auto const& fact : book_.facts) {
        auto const key = sat::key_of(book_, fact);
        if (sat::about_finding(key) && position(fact.index) < chosen_.size()) {
            add_fact_of_finding(fact, facts);
        }
    }
    after_.emplace(solver_, book_.circuit, std::move(facts));
    auto const female = babies_.fact({Fact::Kind::female, 0, 0, {}, {}});
    auto const male = babies_.fact({Fact::Kind::male, 0, 0, {}, {}});
    for (std::size_t i = 0; i < chosen_.size(); ++i) {
        auto const id = promise_.findings[i];
        solver_.add_clause({-chosen_[i], -babies_.own(id).yes});
        for (auto const above : book_.ontology->ancestors(id)) {
            auto const done = babies_.step_done(book_.ontology->at(above).step);
            solver_.add_clause({-chosen_[i], babies_.own(above).possible, done});
        }
        auto const sex = book_.ontology->at(id).sex;
        if (sex == Sex::female) solver_.add_clause({-chosen_[i], -male.yes});
        if (sex == Sex::male) solver_.add_clause({-chosen_[i], -female.yes});
    }
}

void PromiseQuestion::add_fact_of_finding(Fact const& fact, std::vector<sat::TruthVars>& facts) {
    auto const before = facts[fact.node];
    auto const after = sat::add_truth(solver_);
    auto const chosen = chosen_[position(fact.index)];
    for (auto const& [b, a] :
         {std::pair(before.yes, after.yes), std::pair(before.possible, after.possible)}) {
        solver_.add_clause({chosen, -b, a});
        solver_.add_clause({chosen, b, -a});
    }
    bool const state = fact.kind == Fact::Kind::finding || fact.kind == Fact::Kind::history_assumed;
    bool const familial = fact.kind == Fact::Kind::familial;
    solver_.add_clause({-chosen, state ? after.yes : -after.yes});
    solver_.add_clause({-chosen, familial ? -after.possible : after.possible});
    facts[fact.node] = after;
}

std::vector<Lit> PromiseQuestion::rules_reaching(std::vector<ServiceId> const& services,
                                                 Urgency urgency, sat::CircuitCnf& circuit) {
    std::vector<Lit> result;
    for (auto const& rule : book_.rules) {
        bool const reaches = std::any_of(services.begin(), services.end(), [&](ServiceId service) {
            auto const given = urgency_for(rule, service);
            return given && *given >= urgency;
        });
        if (reaches) result.push_back(circuit.at(rule.when.literal).yes);
    }
    return result;
}

Lit PromiseQuestion::broken(CompiledOutcome const& outcome) {
    using Kind = CompiledOutcome::Kind;
    std::vector<ServiceId> all;
    std::vector<std::vector<ServiceId>> each;
    for (ServiceId service = 0; service < book_.book->services.size(); ++service) {
        all.push_back(service);
        each.push_back({service});
    }
    auto const reached = [&] {
        return sat::disjunction(solver_,
                                rules_reaching(outcome.services, outcome.at_least, circuit_));
    };
    switch (outcome.kind) {
        case Kind::suggest: return -reached();
        case Kind::never: return reached();
        case Kind::holds: return -circuit_.at(outcome.holds).yes;
        case Kind::never_met: return circuit_.at(outcome.holds).yes;
        case Kind::keeps_urgency: return lowered({all});
        case Kind::keeps_services: return lowered(each);
    }
    return solver_.always();
}

/// Some group of services is reached at some urgency before, and not at that urgency afterwards.
Lit PromiseQuestion::lowered(std::vector<std::vector<ServiceId>> const& groups) {
    std::vector<Lit> some;
    for (auto const& group : groups) {
        for (auto const urgency :
             {Urgency::routine, Urgency::urgent, Urgency::same_day, Urgency::emergency}) {
            auto const before = sat::disjunction(solver_, rules_reaching(group, urgency, circuit_));
            auto const after = sat::disjunction(solver_, rules_reaching(group, urgency, *after_));
            some.push_back(sat::conjunction(solver_, {before, -after}));
        }
    }
    return sat::disjunction(solver_, some);
}

void PromiseQuestion::leave_open_counts_out() {
    auto const leave_out = [&](sat::CircuitCnf& circuit) {
        for (auto const& split : book_.splits) {
            auto const unless = circuit.at(split.unless);
            solver_.add_clause({-circuit.at(split.counted).yes, unless.yes, -unless.possible});
        }
    };
    leave_out(circuit_);
    if (after_) leave_out(*after_);
}

}  // namespace asterism
