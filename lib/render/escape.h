// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>

namespace asterism {

/// The text made safe for a terminal: control characters (escape sequences included), and the marks
/// that turn the direction of writing, become visible escapes such as `\x1b` or `\u202e`. Newlines
/// are kept when asked.
std::string terminal_safe(std::string_view text, bool keep_newlines = false);

}  // namespace asterism
