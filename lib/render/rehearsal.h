// SPDX-License-Identifier: MIT
#pragma once

#include <string>

#include <nlohmann/json_fwd.hpp>

#include "review/mutant_trial.h"
#include "review/rehearse.h"

namespace asterism {

inline constexpr auto rehearse_schema = "asterism.rehearse/1";

/// What was rehearsed; `trial` is null when no mutants were asked for.
struct RehearsalView {
    Rehearsal const& rehearsal;
    Trial const* trial = nullptr;
    Vocabulary const& vocabulary;
};

std::string rehearsal_text(RehearsalView const& view);
/// Keys: DEVELOPERS.md.
nlohmann::ordered_json rehearsal_json(RehearsalView const& view);
/// JUnit XML: one test case a vignette, and one a condition that no vignette reaches both ways is
/// not made: coverage and mutants are properties of the suite.
std::string rehearsal_junit(RehearsalView const& view);

/// Vignettes that fail, those written by the program left out.
std::size_t failing(Rehearsal const& rehearsal);

}  // namespace asterism
