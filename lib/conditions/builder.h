// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "cases/case.h"
#include "conditions/literal.h"
#include "conditions/range.h"
#include "ontology/ontology.h"

namespace asterism {

using TallyId = std::uint32_t;
using ConstellationId = std::uint32_t;

/// Which side of a paired finding a condition asks for.
enum class SideWanted : std::uint8_t { left, right, both, one };

/// What of a measured value is compared.
enum class Statistic : std::uint8_t { z, centile, value };

struct MeasureTest {
    MeasureId measure = 0;
    Statistic statistic = Statistic::value;
    Range range;
    std::string norm{};  ///< whose z or centile is meant; empty: that of the preferred norm

    friend auto operator<=>(MeasureTest const&, MeasureTest const&) = default;
};

/// Points are kept in tenths, so that halves add up exactly.
using Tenths = std::int64_t;

/// What a condition may ask of the book being compiled. Every call returns a literal whose truth is
/// known once the facts of a case are; equal questions return the same literal.
class Builder {
public:
    virtual ~Builder() = default;

    virtual Literal present(FindingId finding) = 0;
    virtual Literal on_side(FindingId finding, SideWanted side) = 0;
    virtual Literal graded(FindingId finding, std::uint32_t grade) = 0;
    virtual Literal tally_at_least(TallyId tally, Tenths threshold) = 0;
    virtual Literal reached(ConstellationId constellation) = 0;
    virtual Literal measured(MeasureTest const& test) = 0;
    virtual Literal age(Range const& hours) = 0;
    virtual Literal gestation(Range const& days) = 0;
    virtual Literal sex(Sex sex) = 0;

    /// True when the weights of the true inputs reach the threshold, false when those not yet false
    /// cannot.
    virtual Literal gate(std::int64_t threshold, std::vector<Weighted> inputs) = 0;

    Literal at_least(std::int64_t count, std::vector<Literal> const& literals);
    Literal all(std::vector<Literal> const& literals);
    Literal any(std::vector<Literal> const& literals);
};

}  // namespace asterism
