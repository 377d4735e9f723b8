// SPDX-License-Identifier: MIT
#pragma once

#include <map>
#include <optional>
#include <set>
#include <vector>

#include "cases/case.h"
#include "review/sat/circuit_cnf.h"
#include "review/sat/fact_key.h"

namespace asterism::sat {

/// One possible baby, with whatever is known of it, as clauses over the facts that the given books
/// ask for. All books share one ontology; facts they share are the same variables, so that two
/// books can be set against each other.
///
/// A model is a case that can be written down: a finding stated absent has no finding below it
/// stated present, sides and grades belong to what is stated, a finding of the other sex is not
/// there, at most one sex, one gestation (a day or a week), one age, and measures whose cut-offs
/// are passed in order. How two different scales of one measure, two measures, or a measure and the
/// gestation hang together is not written as clauses: "no such baby" is therefore always true,
/// while a model may ask for a measure that no number gives. `realise` finds that out.
class Babies {
public:
    Babies(Solver& solver, std::vector<CompiledRulebook const*> const& books);

    TruthVars fact(FactKey const& key) const { return facts_.at(key); }
    std::map<FactKey, TruthVars> const& facts() const { return facts_; }
    /// The finding's own state, before inheritance and derivation.
    TruthVars own(FindingId finding) const { return own_[finding]; }
    /// The facts of one of the books, by node, for a `CircuitCnf`.
    std::vector<TruthVars> by_node(CompiledRulebook const& book) const;
    CircuitCnf circuit(CompiledRulebook const& book) const {
        return {solver_, book.circuit, by_node(book)};
    }
    Lit step_done(StepId step) const { return done_[step]; }

    /// The last model as a case. Nothing when a measure would need a value that no number gives;
    /// `blocked` then holds a clause that leaves this combination out, to be added before the next
    /// try.
    std::optional<Case> realise(std::vector<Lit>& blocked) const;

private:
    friend class CaseFromModel;

    /// Facts that hang together: exactly the listed combinations occur, each with a literal that
    /// chooses it.
    struct Group {
        std::vector<FactKey> keys;
        std::vector<std::vector<Truth>> patterns;
        std::vector<Lit> chosen;
    };

    void collect(CompiledRulebook const& book);
    TruthVars add(FactKey const& key);
    void prefer(TruthVars truth, Truth value);
    TruthVars const* find(FactKey const& key) const;
    void add_findings();
    void add_sides(FindingId finding);
    void add_absent_sides(FindingId finding, FactKey const& side);
    void add_grades(FindingId finding);
    void add_history(FindingId finding);
    void add_absent_ancestor(FindingId ancestor);
    bool measure_can_decide(FindingId finding) const;
    Lit decided_by_measures(CompiledRulebook const& book, FindingId finding);
    void add_sex();
    void add_times();
    void add_measures();
    void add_group(Group group);

    Solver& solver_;
    Ontology const& ontology_;
    std::vector<CompiledRulebook const*> books_;
    std::map<FactKey, TruthVars> facts_;
    std::vector<TruthVars> own_;
    std::vector<Lit> done_;
    std::map<MeasureId, std::vector<Group>> measures_;
    std::optional<Group> sex_, age_, gestation_;
};

/// Every combination of truths that the tests of one scale can have, when a number is known to lie
/// within some band; one list a combination, in the order of the ranges.
std::vector<std::vector<Truth>> band_patterns(std::vector<Range> const& ranges);

/// Ages and gestations worth telling apart for these ranges, the simplest first.
std::vector<Duration> ages_to_try(std::vector<Range> const& hours);
std::vector<Gestation> gestations_to_try();

}  // namespace asterism::sat
