// SPDX-License-Identifier: MIT
#include "answer.h"

namespace asterism::cli {

Assessment answer_for(AssessmentWriter const& writer, TextOptions const& text,
                      CompiledRulebook const& book, Case const& baby) {
    return assess(book, baby, writer.changes(text));
}

}  // namespace asterism::cli
