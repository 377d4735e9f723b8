// SPDX-License-Identifier: MIT
#include "render/markdown.h"

#include "render/escape.h"

namespace asterism {

namespace {

constexpr std::string_view obeyed = "\\`*_{}[]()#+!|~$^=@";

bool is_space(char c) { return c == ' '; }

/// `-`, `.` and `:` are harmless within words and sentences; they matter where a list item, a rule
/// or an address could begin.
bool escaped_here(std::string_view text, std::size_t i) {
    char const c = text[i];
    if (obeyed.find(c) != std::string_view::npos) return true;
    bool const starts_word = i == 0 || is_space(text[i - 1]);
    bool const ends_word = i + 1 == text.size() || is_space(text[i + 1]);
    if (c == '-') return starts_word;
    if (c == '.') {
        bool const after_number = i > 0 && text[i - 1] >= '0' && text[i - 1] <= '9' && ends_word;
        bool const after_www =
            i >= 3 && (text.substr(i - 3, 3) == "www" || text.substr(i - 3, 3) == "WWW");
        return after_number || after_www;
    }
    return c == ':' && text.substr(i + 1, 1) == "/";
}

}  // namespace

std::string markdown_safe(std::string_view text) {
    auto const visible = terminal_safe(text);
    std::string result;
    for (std::size_t i = 0; i < visible.size(); ++i) {
        char const c = visible[i];
        if (c == '<')
            result += "&lt;";
        else if (c == '>')
            result += "&gt;";
        else if (c == '&')
            result += "&amp;";
        else if (escaped_here(visible, i))
            result += std::string("\\") + c;
        else
            result += c;
    }
    return result;
}

}  // namespace asterism
