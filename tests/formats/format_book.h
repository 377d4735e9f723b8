// SPDX-License-Identifier: MIT
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "assess/assessment.h"
#include "cases/case.h"
#include "compile/compiled.h"
#include "render/assessment_context.h"

namespace asterism::testing {

/// The small book in tests/formats/book/.
CompiledRulebook const& format_book();
/// The clinical book that the program carries.
CompiledRulebook const& shipped_book();

std::string file_text(std::string const& path);

struct Judged {
    Case baby;
    Assessment assessment;
    AssessmentContext context;
};

/// A case judged by a book, what would change it included.
Judged judged(CompiledRulebook const& book, std::string const& case_text);
/// One of the cases beside the small book, with an engine version that no release changes.
Judged golden_case(std::string const& name);

/// A writer, by the extension of its golden files.
struct Writer {
    std::string name;
    std::function<std::string(Judged const&)> write;
};

std::vector<Writer> const& writers();
std::string written(std::string const& writer, Judged const& judged);

std::vector<std::string> lines_of(std::string const& text);

}  // namespace asterism::testing
