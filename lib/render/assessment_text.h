// SPDX-License-Identifier: MIT
#pragma once

#include <string>

#include "assess/assess.h"
#include "assess/assessment.h"

namespace asterism {

struct TextOptions {
    bool colour = false;
};

/// The answer for a resident: what to do and how soon, then why, then what was set aside, what was not examined,
/// first steps, follow-up and cautions. 80 columns.
std::string assessment_text(Assessment const& assessment, TextOptions options = {});

/// A rule's conditions, indented, with the value seen at each.
std::string trace_text(std::vector<TraceLine> const& lines, std::string_view rule);

/// The lines that every output for people ends with.
std::string_view safety_text();

}  // namespace asterism
