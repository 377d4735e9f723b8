// SPDX-License-Identifier: MIT
#include "review/sat/solver.h"

#include <cadical.hpp>

namespace asterism::sat {

namespace {

class Deadline final : public CaDiCaL::Terminator {
public:
    explicit Deadline(std::chrono::milliseconds time)
        : end_(std::chrono::steady_clock::now() + time) {}
    bool terminate() override { return std::chrono::steady_clock::now() >= end_; }

private:
    std::chrono::steady_clock::time_point end_;
};

}  // namespace

struct Solver::Engine {
    mutable CaDiCaL::Solver solver;
    std::vector<Lit> preferred;  ///< not told to the solver yet: it forgets what is said of a
                                 ///< variable without clauses
};

Solver::Solver(std::vector<std::vector<Lit>>* copy)
    : engine_(std::make_unique<Engine>()), copy_(copy) {
    // Without preprocessing, and without guesses that satisfy everything at once: both would pass
    // over the preferred values.
    engine_->solver.configure("plain");
    engine_->solver.set("quiet", 1);
    for (auto const* guess : {"lucky", "walk", "rephase"}) engine_->solver.set(guess, 0);
    always_ = add_variable();
    add_clause({always_});
}

Solver::~Solver() = default;
Solver::Solver(Solver&&) noexcept = default;
Solver& Solver::operator=(Solver&&) noexcept = default;

Lit Solver::add_variable() { return ++last_; }

void Solver::add_clause(std::span<Lit const> literals) {
    for (auto const literal : literals) engine_->solver.add(literal);
    engine_->solver.add(0);
    if (copy_) copy_->emplace_back(literals.begin(), literals.end());
    ++clauses_;
}

void Solver::prefer(Lit literal) { engine_->preferred.push_back(literal); }

Answer Solver::solve(std::span<Lit const> assumptions, Limits const& limits) {
    auto& solver = engine_->solver;
    Deadline deadline(limits.time);
    if (limits.time.count() <= 0) return Answer::undecided;
    for (auto const literal : engine_->preferred) solver.phase(literal);
    engine_->preferred.clear();
    for (auto const literal : assumptions) solver.assume(literal);
    solver.limit("conflicts", limits.conflicts);
    solver.connect_terminator(&deadline);
    int const status = solver.solve();
    solver.disconnect_terminator();
    if (status == 10) return Answer::satisfiable;
    return status == 20 ? Answer::unsatisfiable : Answer::undecided;
}

bool Solver::value(Lit literal) const { return engine_->solver.val(literal) > 0; }

Lit conjunction(Solver& solver, std::vector<Lit> const& literals) {
    if (literals.empty()) return solver.always();
    if (literals.size() == 1) return literals.front();
    auto const result = solver.add_variable();
    std::vector<Lit> back{result};
    for (auto const literal : literals) {
        solver.add_clause({-result, literal});
        back.push_back(-literal);
    }
    solver.add_clause(back);
    return result;
}

Lit disjunction(Solver& solver, std::vector<Lit> const& literals) {
    std::vector<Lit> negated;
    for (auto const literal : literals) negated.push_back(-literal);
    return -conjunction(solver, negated);
}

}  // namespace asterism::sat
