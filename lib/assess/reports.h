// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "assess/evidence.h"

namespace asterism {

/// Every tally of the book's own (not those of constellations) with its bounds and what it counted.
std::vector<TallyResult> tally_results(CompiledRulebook const& book, CaseFacts const& facts,
                                       EvidenceReader const& reader);

/// Constellations with at least one item present, reached ones first, else in book order; never
/// ranked by likelihood.
std::vector<ConstellationResult> constellation_results(CompiledRulebook const& book,
                                                       CaseFacts const& facts,
                                                       EvidenceReader const& reader);

/// Present findings that decide nothing, each with the reason: familial, normal, or of a field
/// already counted.
std::vector<SetAside> set_aside(CompiledRulebook const& book, CaseFacts const& facts,
                                EvidenceReader const& reader);

/// Every finding that is stated or present, in head-to-toe order.
std::vector<Evidence> finding_results(CompiledRulebook const& book, CaseFacts const& facts,
                                      EvidenceReader const& reader);

std::vector<MeasureResult> measure_results(CompiledRulebook const& book, CaseFacts const& facts);

/// Statements that do not fit: against a measure, of the other sex, a derived finding judged by
/// eye.
std::vector<Caution> case_cautions(CompiledRulebook const& book, Case const& baby,
                                   CaseFacts const& facts);

}  // namespace asterism
