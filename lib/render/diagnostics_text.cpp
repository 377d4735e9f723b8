// SPDX-License-Identifier: MIT
#include "render/diagnostics_text.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/fold.h"
#include "render/escape.h"

namespace asterism {

namespace {

constexpr std::size_t widest_line = 110;

/// The line cut around the caret, so that a file of one endless line still gives a readable
/// message.
struct Excerpt {
    std::string text;
    int caret = 0;
    int length = 1;
};

bool continues(char byte) { return (static_cast<unsigned char>(byte) & 0xC0) == 0x80; }

Excerpt excerpt(Span const& span) {
    auto const at = span.position();
    auto const line = span.source->line(at.line);
    auto const column = std::min<std::size_t>(
        span.begin - span.source->line_start(at.line - span.source->first_line()), line.size());
    std::size_t from = column > widest_line * 2 / 3 ? column - widest_line / 3 : 0;
    while (from > 0 && continues(line[from])) --from;
    auto to = std::min(line.size(), from + widest_line);
    while (to < line.size() && continues(line[to])) --to;
    auto const end = std::min<std::size_t>(column + (span.end - span.begin), to);
    Excerpt result;
    auto const lead = from > 0 ? std::string("...") : std::string();
    result.text =
        lead + terminal_safe(line.substr(from, to - from)) + (to < line.size() ? "..." : "");
    result.caret = display_width(lead + terminal_safe(line.substr(from, column - from)));
    result.length = std::max(
        1, display_width(terminal_safe(line.substr(column, end > column ? end - column : 0))));
    return result;
}

std::string at_place(Span const& span, std::string_view label, std::string const& message,
                     std::string const& code) {
    auto const place = span.known() ? span.place() + ": " : std::string();
    auto text = fmt::format("{}{}: {}{}\n", terminal_safe(place), label, terminal_safe(message),
                            code.empty() ? "" : " [" + code + "]");
    if (!span.known() || span.source->text().empty()) return text;
    auto const shown = excerpt(span);
    return text + fmt::format("  {}\n  {}{}\n", shown.text,
                              std::string(static_cast<std::size_t>(shown.caret), ' '),
                              std::string(static_cast<std::size_t>(shown.length), '^'));
}

}  // namespace

std::string diagnostics_text(Diagnostics const& diagnostics) {
    std::string text;
    for (auto const& diagnostic : diagnostics.sorted()) {
        text += at_place(diagnostic.span, to_text(diagnostic.severity), diagnostic.message,
                         diagnostic.code);
        for (auto const& related : diagnostic.related)
            text += at_place(related.span, "note", related.message, {});
        if (!diagnostic.help.empty())
            text += fmt::format("  help: {}\n", terminal_safe(diagnostic.help));
    }
    return text;
}

}  // namespace asterism
