// SPDX-License-Identifier: MIT
#pragma once

#include "compile/circuit_builder.h"

namespace asterism {

/// Adds conditions to the circuit of a book that is already compiled.
class PromiseBuilder final : public CircuitBuilder {
public:
    using CircuitBuilder::CircuitBuilder;

    Literal present(FindingId finding) override { return book_.present[finding]; }
    Literal tally_at_least(TallyId tally, Tenths threshold) override;
    Literal reached(ConstellationId constellation) override;
    Literal measured(MeasureTest const& test) override;
};

}  // namespace asterism
