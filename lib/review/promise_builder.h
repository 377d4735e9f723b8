// SPDX-License-Identifier: MIT
#pragma once

#include <map>

#include "compile/compiled.h"
#include "conditions/builder.h"

namespace asterism {

/// Adds conditions to the circuit of a book that is already compiled: what the book asks already is
/// shared, the rest becomes new facts and gates.
class PromiseBuilder final : public Builder {
public:
    explicit PromiseBuilder(CompiledRulebook& book);

    Literal present(FindingId finding) override { return book_.present[finding]; }
    Literal on_side(FindingId finding, SideWanted side) override;
    Literal graded(FindingId finding, std::uint32_t grade) override;
    Literal tally_at_least(TallyId tally, Tenths threshold) override;
    Literal reached(ConstellationId constellation) override;
    Literal measured(MeasureTest const& test) override;
    Literal age(Range const& hours) override;
    Literal gestation(Range const& days) override;
    Literal sex(Sex sex) override;
    Literal gate(std::int64_t threshold, std::vector<Weighted> inputs) override;

    Literal familial(FindingId finding);

private:
    Literal fact(Fact::Kind kind, std::uint32_t index, std::uint32_t detail = 0);
    Literal one_side(FindingId finding, Fact::Kind side);
    std::uint32_t range_index(Range const& range);

    CompiledRulebook& book_;
    std::map<std::tuple<Fact::Kind, std::uint32_t, std::uint32_t>, NodeId> facts_;
};

}  // namespace asterism
