// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "assess/assessment.h"
#include "assess/facts.h"
#include "compile/compiled.h"

namespace asterism {

/// Turns truths of the circuit into things a person can read. Holds references only.
class EvidenceReader {
public:
    EvidenceReader(CompiledRulebook const& book, Case const& baby, CaseFacts const& facts)
        : book_(book), baby_(baby), facts_(facts), vocabulary_(book.vocabulary()) {}

    Truth value(Literal literal) const { return value_of(literal, facts_.values); }
    Vocabulary const& vocabulary() const { return vocabulary_; }

    /// The leaves that made a condition what it is: for a true `any` the true children, and so on
    /// down.
    std::vector<Evidence> decisive(CompiledCondition const& condition) const;

    /// One finding with everything recorded of it.
    Evidence finding(FindingId id) const;
    /// A leaf condition with the value seen.
    Evidence leaf(CompiledCondition const& condition) const;
    /// The most specific findings by which `id` is present; itself when it is stated.
    std::vector<FindingId> present_by(FindingId id) const;
    /// The findings that count in a tally, in order, each key once.
    std::vector<Evidence> counted(CompiledTally const& tally) const;

private:
    void collect(CompiledCondition const& condition, bool wanted, std::vector<Evidence>& out) const;
    void collect_leaf(CompiledCondition const& condition, std::vector<Evidence>& out) const;
    void add_derivation(FindingId id, std::vector<Evidence>& out) const;
    Evidence tally(Leaf const& leaf) const;
    Evidence measure(CompiledCondition const& condition) const;
    std::string how(FindingId id) const;

    CompiledRulebook const& book_;
    Case const& baby_;
    CaseFacts const& facts_;
    Vocabulary vocabulary_;
};

/// Tenths as printed: 30 -> "3", 25 -> "2.5".
std::string points_text(Tenths tenths);

}  // namespace asterism
