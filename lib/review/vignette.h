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

/// What the book must call a finding of this baby; or that it is not there (`not-present`) or not
/// settled (`open`), which matters where measures decide it.
struct ExpectedClass {
    FindingId finding = 0;
    Word name;
    Truth present = Truth::yes;
    std::optional<FindingClass> value;  ///< with `present`
};

/// A worked baby ready to be judged.
struct Vignette {
    Word id;
    bool generated = false;  ///< written by the program: counts towards no total
    bool sourced = false;    ///< somebody said where the expectation comes from
    Case baby;
    /// False when the vignette speaks of counts or classes alone (`referrals: not-compared`).
    bool compares_referrals = true;
    std::vector<ExpectedReferral> referrals;
    std::vector<ExpectedTally> tallies;
    std::vector<ExpectedConstellation> constellations;
    std::vector<ExpectedClass> classes;

    /// Whether it may speak against a changed book: a generated one only once it has a source.
    bool speaks() const { return !generated || sourced; }
};

/// What `expect` may look like.
yaml::Shape expectation_shape();

/// Reads every vignette of the book; problems in a vignette leave it out.
std::vector<Vignette> read_vignettes(CompiledRulebook const& book, Diagnostics& diagnostics);

}  // namespace asterism
