// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <string>
#include <vector>

#include "compile/compiled.h"

namespace asterism {

/// A condition of the book, however deep, and how many vignettes saw each of its truths.
struct CoveredNode {
    std::string part;  ///< the rule, derivation, tally or constellation that it belongs to
    CompiledCondition const* condition = nullptr;
    std::array<std::size_t, 3> seen{};  ///< by Truth

    std::size_t times(Truth truth) const { return seen[static_cast<std::size_t>(truth)]; }
    /// Seen met and seen not met. Unknown is counted beside: not every condition can be unknown.
    bool covered() const { return times(Truth::yes) > 0 && times(Truth::no) > 0; }
};

/// Which conditions of a book's rules, tallies, constellations and derivations the vignettes reach.
/// The book must outlive this and stay where it is.
class Coverage {
public:
    explicit Coverage(CompiledRulebook const& book);

    /// Notes one baby's evaluated circuit.
    void see(std::span<Truth const> values);

    std::vector<CoveredNode> const& nodes() const { return nodes_; }
    std::size_t covered() const;
    /// 0 to 100; 100 for a book without conditions.
    double percent() const;

private:
    void add(std::string const& part, CompiledCondition const& condition);

    std::vector<CoveredNode> nodes_;
};

}  // namespace asterism
