// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "assess/facts.h"
#include "base/diagnostic.h"
#include "compile/compiled.h"
#include "review/coverage.h"
#include "review/vignette.h"

namespace asterism {

/// One thing in which the book's answer differs from a vignette's expectation.
struct VignetteFailure {
    std::string vignette;
    Span place;
    std::string message;
};

/// What the book says otherwise than the vignette: verdicts, urgencies, deciding rules, tallies,
/// constellations, classes. A service that the vignette does not list must not be suggested.
/// `facts` are those of the vignette's baby under this book.
std::vector<VignetteFailure> judge(CompiledRulebook const& book, Vignette const& vignette,
                                   CaseFacts const& facts);
std::vector<VignetteFailure> judge(CompiledRulebook const& book, Vignette const& vignette);

/// Every vignette that could be read, judged.
struct Rehearsal {
    std::vector<Vignette> vignettes;
    std::vector<std::vector<VignetteFailure>> failures;  ///< one list a vignette
    Coverage coverage;                                   ///< generated vignettes left out
};

/// Judges every vignette. Those that cannot be read are reported as diagnostics and left out.
Rehearsal rehearse_all(CompiledRulebook const& book, Diagnostics& diagnostics);

/// The failures alone.
std::vector<VignetteFailure> rehearse(CompiledRulebook const& book, Diagnostics& diagnostics);

/// The same, with each failure as an error at its place.
void report_failed_vignettes(CompiledRulebook const& book, Diagnostics& diagnostics);

}  // namespace asterism
