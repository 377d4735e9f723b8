// SPDX-License-Identifier: MIT
#include "answer.h"

#include "assess/changes.h"

namespace asterism::cli {

Assessment answer_for(AssessmentWriter const& writer, CompiledRulebook const& book,
                      Case const& baby) {
    auto assessment = assess(book, baby);
    if (writer.shows_changes) add_what_would_change(book, baby, assessment);
    return assessment;
}

}  // namespace asterism::cli
