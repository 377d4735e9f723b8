// SPDX-License-Identifier: MIT
#pragma once

#include <map>
#include <set>
#include <utility>
#include <vector>

#include "review/sat/babies.h"

namespace asterism {

/// A book and its mutant in one circuit over shared facts: what both compute alike is one node.
class JoinedBooks {
public:
    JoinedBooks(CompiledRulebook const& book, CompiledRulebook const& mutant);
    /// The same with some nodes of another joining taken as facts of their own.
    JoinedBooks(JoinedBooks const& plain, std::set<NodeId> cut);

    /// What of the two answers may differ, as pairs of nodes that are not one and the same.
    struct Difference {
        std::vector<std::pair<Literal, Literal>> truths;  ///< rules, patterns, findings
        std::vector<std::pair<std::vector<Weighted>, std::vector<Weighted>>> sums;  ///< tallies
        /// Rules whose suggestions changed, as who suggests a service that soon: before and after.
        std::vector<std::pair<std::vector<Literal>, std::vector<Literal>>> reasons;

        bool empty() const { return truths.empty() && sums.empty() && reasons.empty(); }
    };
    Difference difference() const;

    /// Whether both leave the same counts open, and so answer alike wherever their nodes do.
    bool same_splits() const;
    /// Whether both ask the same measures of what numbers decide.
    bool same_measures() const;
    /// The nodes that a count can hang on.
    std::set<NodeId> split_nodes() const;

    /// A literal that is true only of babies of whom the answers may differ.
    sat::Lit differ(sat::Solver& solver, sat::Babies const& babies, Difference const& what) const;
    /// The same with the cut nodes free, as far as they are not known.
    sat::Lit differ_when_cut(sat::Solver& solver, sat::Babies const& babies,
                             Difference const& what) const;

private:
    void add(CompiledRulebook const& book, std::vector<Literal>& nodes);
    Literal joined(CompiledRulebook const& book, Literal literal) const;
    void compare_suggestions(Difference& out) const;
    std::vector<std::pair<Literal, Literal>> splits_of(CompiledRulebook const& book) const;
    std::vector<sat::TruthVars> vars(sat::Babies const& babies) const;
    sat::Lit differ(sat::Solver& solver, sat::CircuitCnf& circuit, Difference const& what) const;

    CompiledRulebook const& book_;
    CompiledRulebook const& mutant_;
    JoinedBooks const* plain_ = nullptr;
    std::set<NodeId> cut_;
    std::map<NodeId, NodeId> cut_facts_;  ///< node of the plain joining -> fact here
    Circuit circuit_;
    std::map<sat::FactKey, NodeId> facts_;
    std::vector<Literal> of_book_, of_mutant_;
};

}  // namespace asterism
