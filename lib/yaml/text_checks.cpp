// SPDX-License-Identifier: MIT
#include "yaml/text_checks.h"

#include <fmt/format.h>

#include "base/fold.h"
#include "base/number.h"
#include "yaml/limits.h"

namespace asterism::yaml {

namespace {

Span byte_at(SourcePtr const& source, std::size_t offset) {
    auto const at = static_cast<std::uint32_t>(offset);
    return {source, at, at + 1};
}

}  // namespace

bool check_text(SourcePtr const& source, Diagnostics& diagnostics) {
    auto const text = source->text();
    if (text.size() > most_bytes) {
        diagnostics.error("too-large", byte_at(source, 0),
                          fmt::format("the file has {} bytes, more than the {} that are read",
                                      text.size(), most_bytes));
        return false;
    }
    std::size_t bad = 0;
    if (!is_utf8(text, &bad)) {
        diagnostics.error("not-utf8", byte_at(source, bad),
                          "the text is not well-formed UTF-8 here", "save the file as UTF-8");
        return false;
    }
    if (auto const nul = text.find('\0'); nul != std::string_view::npos) {
        diagnostics.error("nul-byte", byte_at(source, nul),
                          "a NUL byte cannot stand in a text file");
        return false;
    }
    auto const content = trim(text.substr(0, 3) == "\xEF\xBB\xBF" ? text.substr(3) : text);
    if (content.empty()) diagnostics.error("empty-file", byte_at(source, 0), "the file is empty");
    return !content.empty();
}

}  // namespace asterism::yaml
