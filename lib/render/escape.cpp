// SPDX-License-Identifier: MIT
#include "render/escape.h"

#include <fmt/format.h>

namespace asterism {

namespace {

bool is_control(unsigned char byte) { return byte < 0x20 || byte == 0x7F; }

/// The code point of a three-byte sequence that is invisible or turns the writing direction; 0 otherwise.
unsigned hidden_mark(std::string_view text, std::size_t at) {
    if (at + 2 >= text.size() || static_cast<unsigned char>(text[at]) != 0xE2) return 0;
    auto const second = static_cast<unsigned char>(text[at + 1]) & 0x3Fu;
    auto const third = static_cast<unsigned char>(text[at + 2]) & 0x3Fu;
    unsigned const point = 0x2000u | second << 6 | third;
    bool const turns = point == 0x200E || point == 0x200F || (point >= 0x202A && point <= 0x202E) || (point >= 0x2066 && point <= 0x2069);
    return turns || point == 0x2028 || point == 0x2029 ? point : 0;
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
        } else if (auto const mark = hidden_mark(text, i)) {
            result += fmt::format("\\u{:04x}", mark);
            i += 2;
        } else {
            result += text[i];
        }
    }
    return result;
}

}  // namespace asterism
