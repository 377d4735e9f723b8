// SPDX-License-Identifier: MIT
#pragma once

#include <chrono>
#include <initializer_list>
#include <memory>
#include <span>
#include <vector>

namespace asterism::sat {

/// A variable of the solver (positive) or its negation, as in the DIMACS format.
using Lit = int;

/// How long a question may be thought about; what is reached first ends it.
struct Limits {
    int conflicts = 2'000'000;
    std::chrono::milliseconds time{20'000};
};

enum class Answer { satisfiable, unsatisfiable, undecided };

/// An incremental SAT solver. Deterministic: the same calls give the same answers and models,
/// unless the time runs out.
class Solver {
public:
    /// `copy`, when given, receives every clause too, so that another solver can judge the same
    /// question.
    explicit Solver(std::vector<std::vector<Lit>>* copy = nullptr);
    ~Solver();
    Solver(Solver&&) noexcept;
    Solver& operator=(Solver&&) noexcept;

    Lit add_variable();
    void add_clause(std::span<Lit const> literals);
    void add_clause(std::initializer_list<Lit> literals) {
        add_clause(std::span(literals.begin(), literals.size()));
    }
    /// A literal that is always true.
    Lit always() const { return always_; }
    /// Makes the solver try this value first: models then hold what the question needs and little
    /// else.
    void prefer(Lit literal);

    /// Is there a model of all clauses in which the assumptions hold too?
    Answer solve(std::span<Lit const> assumptions, Limits const& limits);
    Answer solve(std::initializer_list<Lit> assumptions, Limits const& limits) {
        return solve(std::span(assumptions.begin(), assumptions.size()), limits);
    }
    /// Of the last model; only after `satisfiable`.
    bool value(Lit literal) const;
    std::size_t clauses() const { return clauses_; }

private:
    struct Engine;
    std::unique_ptr<Engine> engine_;
    Lit last_ = 0;
    Lit always_ = 0;
    std::size_t clauses_ = 0;
    std::vector<std::vector<Lit>>* copy_ = nullptr;
};

/// A literal equal to "all of them" and to "one of them at least".
Lit conjunction(Solver& solver, std::vector<Lit> const& literals);
Lit disjunction(Solver& solver, std::vector<Lit> const& literals);

}  // namespace asterism::sat
