// SPDX-License-Identifier: MIT
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "assess/assessment.h"
#include "base/diagnostic.h"
#include "compile/compiled.h"
#include "yaml/shape.h"

namespace asterism {

/// What a vignette expects of one service.
struct ExpectedReferral {
    Word service;
    Verdict verdict = Verdict::suggested;
    std::optional<Urgency> urgency;
    std::optional<std::vector<Word>> by;  ///< every rule that decides it, in any order
};

struct ExpectedTally {
    Word tally;
    double value = 0;
};

struct ExpectedConstellation {
    Word constellation;
    Truth reached = Truth::yes;
};

/// A worked baby ready to be judged.
struct Vignette {
    Word id;
    Case baby;
    std::vector<ExpectedReferral> referrals;
    std::vector<ExpectedTally> tallies;
    std::vector<ExpectedConstellation> constellations;
};

/// What `expect` may look like.
yaml::Shape expectation_shape();

/// Reads every vignette of the book; problems in a vignette leave it out.
std::vector<Vignette> read_vignettes(CompiledRulebook const& book, Diagnostics& diagnostics);

}  // namespace asterism
