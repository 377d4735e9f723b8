// SPDX-License-Identifier: MIT
#pragma once

#include "assess/measure_values.h"

namespace asterism {

/// What a norm is asked about one baby: its sex, gestation and age, without a value yet.
norms::Query query_about(Case const& baby, Measure const& measure);

/// What every norm says of a value and its margin, given as two bands around each other. Margins
/// may be wider to one side (a ratio), so the ends are asked for one by one.
std::vector<norms::Answer> ask_norms(norms::Standards const& standards, norms::Query const& query,
                                     NumberBand as_read, NumberBand with_margin);

/// Percent below, margin included; nothing when the norm has no centiles.
std::optional<NumberBand> centile_with_margin(norms::Reading const& reading);

/// Fills in the answers of all norms and the numbers of the preferred one; when no norm is
/// preferred the note says why. The reading already has its value and margin.
void add_norms(Ontology const& ontology, norms::Standards const& standards, Case const& baby,
               MeasureReading& reading);

/// Everything a reader should know beside the numbers: limits crossed, what was assumed, cautions.
std::string note_of(norms::Reading const& reading);

}  // namespace asterism
