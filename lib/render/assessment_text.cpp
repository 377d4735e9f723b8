// SPDX-License-Identifier: MIT
#include "render/assessment_text.h"

#include <fmt/format.h>

#include "render/assessment_brief.h"
#include "render/assessment_full.h"
#include "render/escape.h"
#include "render/layout.h"

namespace asterism {

std::string assessment_text(Assessment const& assessment, TextOptions options) {
    Style const style(options.colour);
    return options.detail == Detail::full ? full_text(assessment, style)
                                          : brief_text(assessment, style);
}

std::string trace_text(std::vector<TraceLine> const& lines, std::string_view rule) {
    std::string out = fmt::format("Rule {}\n", rule);
    for (auto const& line : lines) {
        auto const indent = std::string(static_cast<std::size_t>(2 + 2 * line.depth), ' ');
        auto const value = fmt::format("{:<8}", to_text(line.value));
        auto const seen =
            line.seen.empty() ? std::string() : fmt::format("  [{}]", terminal_safe(line.seen));
        out += wrapped(value + line.text + seen, indent, indent + "        ");
    }
    return out;
}

}  // namespace asterism
