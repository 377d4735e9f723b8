// SPDX-License-Identifier: MIT
#pragma once

#include <map>
#include <tuple>
#include <utility>
#include <vector>

#include "compile/compiled.h"
#include "conditions/builder.h"

namespace asterism {

/// The questions that are answered by facts and gates alone. Facts and gates go into the circuit of
/// a book; what the book asks already is shared. Presence, tallies, constellations and measures are
/// left to who builds a book and to who adds to one that stands.
class CircuitBuilder : public Builder {
public:
    explicit CircuitBuilder(CompiledRulebook& book);

    Literal on_side(FindingId finding, SideWanted side) override;
    Literal graded(FindingId finding, std::uint32_t grade) override;
    Literal age(Range const& hours) override;
    Literal gestation(Range const& days) override;
    Literal sex(Sex sex) override;
    Literal gate(std::int64_t threshold, std::vector<Weighted> inputs) override;

    Literal familial(FindingId finding);

protected:
    Literal fact(Fact::Kind kind, std::uint32_t index, std::uint32_t detail = 0);
    /// The place of a test among the book's, where it is added when it is new.
    std::uint32_t test_index(MeasureTest const& test);

    CompiledRulebook& book_;

private:
    Literal one_side(FindingId finding, Fact::Kind side);
    std::uint32_t range_index(Range const& range);

    std::map<std::tuple<Fact::Kind, std::uint32_t, std::uint32_t>, NodeId> facts_;
    std::map<std::pair<FindingId, Fact::Kind>, Literal> sides_;
};

}  // namespace asterism
