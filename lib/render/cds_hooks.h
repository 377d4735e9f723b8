// SPDX-License-Identifier: MIT
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "assess/assessment.h"
#include "cases/case.h"

namespace asterism {

/// An answer as CDS Hooks cards: one for the services that the same rules reach, most urgent first,
/// each with the draft ServiceRequests as suggestions; one for information when nothing is
/// suggested. Every card carries the cautions.
nlohmann::ordered_json cds_cards(Assessment const& assessment, Case const& baby);

}  // namespace asterism
