// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "review/mutant.h"
#include "review/sat/solver.h"
#include "review/vignette.h"

namespace asterism {

enum class MutantFate : std::uint8_t {
    killed,      ///< a vignette notices the edit
    equivalent,  ///< proven: no baby that a case can describe gets another answer
    survived,    ///< neither, undecided ones among them
    refused,     ///< the loader refuses the edited book; counts towards no total
};

std::string_view to_text(MutantFate fate);

struct TriedMutant {
    Mutant mutant;
    MutantFate fate = MutantFate::survived;
    std::string vignette;  ///< killed: by which
    std::string method;    ///< equivalent: how it was proven; survived: why no vignette is offered
    std::string killer;    ///< survived: a vignette (YAML) that would notice, to be given a source
};

struct TrialOptions {
    std::string part = {};   ///< only edits of this rule, finding, tally, constellation or key
    std::size_t sample = 0;  ///< so many, drawn by `seed`; 0: all of them
    std::uint64_t seed = 1;
    unsigned jobs = 1;
    bool search = true;  ///< look for equivalence and killers of what the vignettes miss
    sat::Limits limits{200'000, std::chrono::milliseconds(10'000)};
};

struct Trial {
    std::size_t made = 0;  ///< mutants of the book, or of the part, before sampling
    std::vector<TriedMutant> tried;

    std::size_t count(MutantFate fate) const;
    /// Those that the loader accepts: killed, equivalent and survived.
    std::size_t total() const { return tried.size() - count(MutantFate::refused); }
};

/// Makes every single edit of the book (or a sample) and looks for a vignette that notices it.
/// Generated vignettes speak only once they have a source; a vignette that fails on the book itself
/// speaks of no mutant. The same for any number of jobs.
Trial try_mutants(CompiledRulebook const& book, std::vector<Vignette> const& vignettes,
                  TrialOptions const& options);

}  // namespace asterism
