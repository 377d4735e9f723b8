// SPDX-License-Identifier: MIT
#pragma once

#include <string_view>

namespace asterism::cli {

/// Writes data to stdout; throws when the disk is full or the pipe is closed.
void print(std::string_view text);
/// Writes anything that is not data to stderr.
void report(std::string_view text);
/// Colour only on a terminal that is not dumb, and never when NO_COLOR is set.
bool stdout_has_colour();
bool stdin_is_terminal();

}  // namespace asterism::cli
