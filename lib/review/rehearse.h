// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "compile/compiled.h"

namespace asterism {

/// One thing in which the book's answer differs from a vignette's expectation.
struct VignetteFailure {
    std::string vignette;
    Span place;
    std::string message;
};

/// Judges every vignette and compares verdicts, urgencies, deciding rules, tallies and
/// constellations. A service that the vignette does not list must not be suggested. Vignettes that
/// cannot be read are reported as diagnostics.
std::vector<VignetteFailure> rehearse(CompiledRulebook const& book, Diagnostics& diagnostics);

/// The same, with each failure as an error at its place.
void report_failed_vignettes(CompiledRulebook const& book, Diagnostics& diagnostics);

}  // namespace asterism
