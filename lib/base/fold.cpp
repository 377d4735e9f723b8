// SPDX-License-Identifier: MIT
#include "base/fold.h"

#include <algorithm>
#include <cstdlib>
#include <memory>

#include <utf8proc.h>

namespace asterism {

namespace {

using Bytes = std::unique_ptr<utf8proc_uint8_t, decltype(&std::free)>;

auto const* bytes(std::string_view text) {
    return reinterpret_cast<utf8proc_uint8_t const*>(text.data());
}

/// Calls `visit` with each code point; stops at the first ill-formed byte and returns its offset.
template <class Visit>
std::size_t each_code_point(std::string_view text, Visit visit) {
    std::size_t at = 0;
    while (at < text.size()) {
        utf8proc_int32_t point = 0;
        auto const used = utf8proc_iterate(bytes(text) + at,
                                           static_cast<utf8proc_ssize_t>(text.size() - at), &point);
        if (used <= 0) return at;
        visit(point);
        at += static_cast<std::size_t>(used);
    }
    return at;
}

bool is_name_category(utf8proc_int32_t point) {
    switch (utf8proc_category(point)) {
        case UTF8PROC_CATEGORY_LU:
        case UTF8PROC_CATEGORY_LL:
        case UTF8PROC_CATEGORY_LT:
        case UTF8PROC_CATEGORY_LM:
        case UTF8PROC_CATEGORY_LO:
        case UTF8PROC_CATEGORY_ND:
        case UTF8PROC_CATEGORY_NL:
        case UTF8PROC_CATEGORY_NO: return true;
        default: return point == '<' || point == '>' || point == '%';
    }
}

std::string keep_name_letters(std::string_view text) {
    std::string result;
    each_code_point(text, [&](utf8proc_int32_t point) {
        if (!is_name_category(point)) return;
        utf8proc_uint8_t buffer[4];
        auto const size = utf8proc_encode_char(point, buffer);
        result.append(reinterpret_cast<char const*>(buffer), static_cast<std::size_t>(size));
    });
    return result;
}

/// British and American spellings of the same Greek root: ae and oe become e.
std::string unify_digraphs(std::string_view text) {
    std::string result;
    for (std::size_t i = 0; i < text.size(); ++i) {
        bool const digraph =
            i + 1 < text.size() && text[i + 1] == 'e' && (text[i] == 'a' || text[i] == 'o');
        if (!digraph) result += text[i];
    }
    return result;
}

std::string ascii_only(std::string_view text) {
    std::string result;
    for (char c : text) {
        if (static_cast<unsigned char>(c) < 0x80) result += c;
    }
    return result;
}

bool is_ascii(std::string_view text) {
    return std::all_of(text.begin(), text.end(), [](char c) { return (c & 0x80) == 0; });
}

/// What the long way makes of ASCII, of which most names and files consist.
std::string fold_ascii(std::string_view text) {
    std::string kept;
    kept.reserve(text.size());
    for (char const c : text) {
        bool const upper = c >= 'A' && c <= 'Z';
        bool const other =
            (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '<' || c == '>' || c == '%';
        if (upper || other) kept += static_cast<char>(upper ? c - 'A' + 'a' : c);
    }
    return unify_digraphs(kept);
}

}  // namespace

bool is_utf8(std::string_view text, std::size_t* bad) {
    if (is_ascii(text)) return true;
    auto const reached = each_code_point(text, [](utf8proc_int32_t) {});
    if (reached != text.size() && bad) *bad = reached;
    return reached == text.size();
}

std::string fold(std::string_view text) {
    if (is_ascii(text)) return fold_ascii(text);
    if (!is_utf8(text)) return fold(ascii_only(text));
    utf8proc_uint8_t* raw = nullptr;
    auto const options =
        static_cast<utf8proc_option_t>(UTF8PROC_STABLE | UTF8PROC_DECOMPOSE | UTF8PROC_COMPAT |
                                       UTF8PROC_CASEFOLD | UTF8PROC_STRIPMARK | UTF8PROC_IGNORE);
    auto const size =
        utf8proc_map(bytes(text), static_cast<utf8proc_ssize_t>(text.size()), &raw, options);
    Bytes const owner(raw, &std::free);
    if (size < 0) return {};
    return unify_digraphs(
        keep_name_letters({reinterpret_cast<char const*>(raw), static_cast<std::size_t>(size)}));
}

int display_width(std::string_view text) {
    bool const plain =
        std::ranges::all_of(text, [](char byte) { return byte >= ' ' && byte <= '~'; });
    if (plain) return static_cast<int>(text.size());
    int width = 0;
    each_code_point(text, [&](utf8proc_int32_t point) { width += utf8proc_charwidth(point); });
    return width;
}

}  // namespace asterism
