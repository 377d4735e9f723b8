// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>

namespace asterism {

/// The text made inert inside a paragraph of Markdown: control characters become visible, HTML
/// becomes entities, and every character that Markdown could obey is escaped, bare addresses too.
std::string markdown_safe(std::string_view text);

}  // namespace asterism
