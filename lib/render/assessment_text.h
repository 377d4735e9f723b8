// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "assess/assess.h"
#include "assess/assessment.h"
#include "render/assessment_words.h"

namespace asterism {

inline constexpr int brief_lines = 40;  ///< the longest brief answer

enum class Detail : std::uint8_t { brief, full };

struct TextOptions {
    bool colour = false;
    Detail detail = Detail::brief;
};

/// The answer for a resident: what to do and how soon, then why, then what was set aside, what was
/// not examined, first steps, follow-up and cautions. 80 columns; at most `brief_lines` lines
/// unless everything is asked for. What a brief answer leaves out, it says.
std::string assessment_text(Assessment const& assessment, TextOptions options = {});

/// A rule's conditions, indented, with the value seen at each.
std::string trace_text(std::vector<TraceLine> const& lines, std::string_view rule);

}  // namespace asterism
