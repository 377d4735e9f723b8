// SPDX-License-Identifier: MIT
#include "terminal.h"

#include <cstdio>
#include <cstdlib>
#include <stdexcept>
#include <string_view>

#include <unistd.h>

namespace asterism::cli {

void print(std::string_view text) {
    bool const written =
        std::fwrite(text.data(), 1, text.size(), stdout) == text.size() && std::fflush(stdout) == 0;
    if (!written) throw std::runtime_error("standard output cannot be written");
}

void report(std::string_view text) { std::fwrite(text.data(), 1, text.size(), stderr); }

bool stdout_has_colour() {
    char const* no_colour = std::getenv("NO_COLOR");
    char const* term = std::getenv("TERM");
    bool const refused = (no_colour && *no_colour) || !term || std::string_view(term) == "dumb";
    return !refused && isatty(STDOUT_FILENO) == 1;
}

bool stdin_is_terminal() { return isatty(STDIN_FILENO) == 1; }

}  // namespace asterism::cli
