// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "compile/compiled.h"

namespace asterism {

/// One thing that is written differently in two books.
struct Difference {
    std::string part;  ///< `rule`, `class`, `counting key`, `tally` ...: what `id` is
    std::string id;
    std::string label;   ///< its name in print, where it has one other than the id
    std::string aspect;  ///< `condition`, `class`, `urgency for genetics` ...; empty: the whole
    std::string before;  ///< in words; empty when it is new
    std::string after;   ///< in words; empty when it is gone
    std::string place;   ///< file:line:column in the later book, or in the earlier when it is gone
};

/// Everything of `after` that differs from `before`, part by part in the order of the book: what is
/// gone, what is new, what changed. Both books must be compiled with the same ontology. The order
/// in which a book is written, its version and its day make no difference.
std::vector<Difference> differences(CompiledRulebook const& before, CompiledRulebook const& after);

/// Where two conditions part: one entry for each smallest part that was exchanged, left out or put
/// in, `aspect` always `condition`.
std::vector<Difference> condition_differences(Condition const& before,
                                              Vocabulary const& words_before,
                                              Condition const& after,
                                              Vocabulary const& words_after);

}  // namespace asterism
