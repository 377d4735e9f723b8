// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "assess/measure_values.h"
#include "compile/compiled.h"

namespace asterism {

/// Why a finding's own state is what it is, before inheritance and derivation.
enum class Origin : std::uint8_t {
    stated_present,
    stated_absent,
    ancestor_absent,  ///< an ancestor is stated absent
    implied_absent,   ///< its step is done and it is not listed
    history_none,
    other_sex,
    decided_by_measure,  ///< a measure was taken that decides it
    unsure,
    not_examined,
};

struct FindingState {
    Truth own = Truth::unknown;
    Origin origin = Origin::not_examined;
    Statement const* statement = nullptr;   ///< the first statement about it, if any
    Sides present_sides = Sides::not_said;  ///< sides stated present, all statements together
    Sides absent_sides = Sides::not_said;
    bool familial = false;
};

/// Everything not examined stays unknown, or is taken as normal to answer "and if the rest were
/// normal?".
enum class Rest : std::uint8_t { unknown, normal };

/// What one case gives the circuit: a truth for each fact, and where each came from.
struct CaseFacts {
    std::vector<FindingState> states;  ///< by FindingId
    std::vector<MeasureReading> readings;
    std::vector<Truth> values;  ///< by node, gates evaluated
    /// The same with every open split closed: a minor variant that is there counts as long as
    /// nothing is known that takes its place. The lower bounds of tallies are read off these.
    std::vector<Truth> counted;
};

/// Sets the facts and evaluates the circuit. The case must outlive the result.
CaseFacts evaluate(CompiledRulebook const& book, Case const& baby, Rest rest);
/// The facts of the same case under another assumption.
CaseFacts with_rest(CompiledRulebook const& book, Case const& baby, CaseFacts facts, Rest rest);

}  // namespace asterism
