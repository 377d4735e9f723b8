// SPDX-License-Identifier: MIT
#pragma once

#include <map>
#include <optional>
#include <set>
#include <vector>

#include "compile/circuit_builder.h"
#include "compile/compiled.h"
#include "compile/read_conditions.h"

namespace asterism {

/// Builds the circuit on demand: asking for a finding's presence builds its derivation and its
/// children first, asking for a tally builds its members first, and so on. The order of strata
/// follows from who asks whom; a ring of questions is reported as a cycle.
class BookBuilder final : public CircuitBuilder {
public:
    BookBuilder(CompiledRulebook& result, BookConditions const& conditions,
                Diagnostics& diagnostics);

    Literal present(FindingId finding) override;
    Literal tally_at_least(TallyId tally, Tenths threshold) override;
    Literal reached(ConstellationId constellation) override;
    Literal measured(MeasureTest const& test) override;

    void build_derived();
    void build_tally(TallyId tally);
    void build_constellation(ConstellationId constellation);
    /// While a rule is built, its essential history items are facts that can be unknown.
    CompiledCondition build_rule(ConditionPtr const& condition, std::set<FindingId> essential);

private:
    Literal own_state(FindingId finding);
    std::optional<Literal> derivation(FindingId finding);
    void build_derivation(FindingId finding);
    void report_cycle(Span const& span, std::string_view what);

    BookConditions const& conditions_;
    Diagnostics& diagnostics_;
    std::map<std::pair<FindingId, bool>, Literal> present_;
    std::set<FindingId> deriving_;
    std::vector<int> tally_state_;  ///< 0 not built, 1 being built, 2 built
    std::vector<int> constellation_state_;
    std::set<FindingId> essential_;
    std::optional<FindingId> deriving_now_;  ///< the derivation whose condition is being built
};

}  // namespace asterism
