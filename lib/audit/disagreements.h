// SPDX-License-Identifier: MIT
#pragma once

#include "audit/audit.h"

namespace asterism::audit {

/// The referrals that were suggested and not made: the most urgent first, then in order of day and
/// line; at most so many.
std::vector<Disagreement> missed_referrals(AuditedBabies const& babies, std::size_t most);
/// The referrals that were made and not suggested, in order of day and line; at most so many.
std::vector<Disagreement> not_indicated_referrals(AuditedBabies const& babies, std::size_t most);

/// Fills in the reasons, as `assess` gives them by the book of each baby's exam day.
void explain(AuditedBabies const& babies, CasesPlan const& plan, std::vector<Disagreement>& list);

}  // namespace asterism::audit
