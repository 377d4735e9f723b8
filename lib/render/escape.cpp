// SPDX-License-Identifier: MIT
#include "render/escape.h"

#include <fmt/format.h>
#include <utf8proc.h>

namespace asterism {

namespace {

bool is_control(unsigned char byte) { return byte < 0x20 || byte == 0x7F; }

/// Invisible, or turning the direction of writing: soft hyphen, combining grapheme joiner, the
/// Arabic letter mark, fillers, zero-width and directional marks, line and paragraph separators,
/// invisible operators, the byte order mark, and the tags of plane 14.
bool is_hidden(std::int32_t point) {
    return point == 0x00AD || point == 0x034F || point == 0x061C || point == 0x115F ||
           point == 0x1160 || (point >= 0x17B4 && point <= 0x17B5) ||
           (point >= 0x180B && point <= 0x180F) || (point >= 0x200B && point <= 0x200F) ||
           (point >= 0x2028 && point <= 0x202E) || (point >= 0x2060 && point <= 0x206F) ||
           point == 0x3164 || (point >= 0xFE00 && point <= 0xFE0F) || point == 0xFEFF ||
           point == 0xFFA0 || (point >= 0xFFF9 && point <= 0xFFFB) ||
           (point >= 0xE0000 && point <= 0xE0FFF);
}

struct Hidden {
    std::int32_t point = 0;
    std::size_t bytes = 0;  ///< 0: the character at this place is shown as it is
};

Hidden hidden_mark(std::string_view text, std::size_t at) {
    std::int32_t point = -1;
    auto const* bytes = reinterpret_cast<utf8proc_uint8_t const*>(text.data()) + at;
    auto const size =
        utf8proc_iterate(bytes, static_cast<utf8proc_ssize_t>(text.size() - at), &point);
    if (size <= 1 || !is_hidden(point)) return {};
    return {point, static_cast<std::size_t>(size)};
}

/// C1 controls are C2 80 to C2 9F in UTF-8; some terminals obey them.
bool is_c1(std::string_view text, std::size_t at) {
    if (at + 1 >= text.size() || static_cast<unsigned char>(text[at]) != 0xC2) return false;
    auto const second = static_cast<unsigned char>(text[at + 1]);
    return second >= 0x80 && second <= 0x9F;
}

}  // namespace

std::string terminal_safe(std::string_view text, bool keep_newlines) {
    std::string result;
    for (std::size_t i = 0; i < text.size(); ++i) {
        auto const byte = static_cast<unsigned char>(text[i]);
        if (byte == '\n' && keep_newlines) {
            result += '\n';
        } else if (is_control(byte)) {
            result += fmt::format("\\x{:02x}", byte);
        } else if (is_c1(text, i)) {
            result += fmt::format("\\x{:02x}", static_cast<unsigned char>(text[++i]));
        } else if (auto const mark = hidden_mark(text, i); mark.bytes > 0) {
            result += fmt::format("\\u{:04x}", mark.point);
            i += mark.bytes - 1;
        } else {
            result += text[i];
        }
    }
    return result;
}

}  // namespace asterism
