// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "compile/compiled.h"
#include "render/assessment_text.h"

namespace asterism {

/// What a writer of answers may look at.
struct AnswerView {
    Assessment const& assessment;
    Case const& baby;
    CompiledRulebook const& book;
    TextOptions text;
};

/// A format in which an answer can be written: one file and one line of the table.
struct AssessmentWriter {
    std::string_view name;
    std::string_view summary;
    /// Of which services it tells what would change their verdict.
    ChangesTold (*changes)(TextOptions const&);
    std::string (*write)(AnswerView const&);
};

std::vector<AssessmentWriter> const& assessment_writers();
/// The writer with this name, or null.
AssessmentWriter const* assessment_writer(std::string_view name);

}  // namespace asterism
