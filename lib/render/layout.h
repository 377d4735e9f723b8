// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace asterism {

inline constexpr int page_width = 80;  ///< columns of every text for a terminal

/// The lines of a text broken to at most `width` columns, the first after `first`, the others after
/// `rest`. A word wider than a line is broken too, between characters.
std::vector<std::string> wrapped_lines(std::string_view text, std::string_view first,
                                       std::string_view rest, int width = page_width);

/// The same lines joined, each ended by a newline.
std::string wrapped(std::string_view text, std::string_view first, std::string_view rest,
                    int width = page_width);

/// At most `most` lines; where lines are dropped, the last one kept ends in ` ...`.
std::vector<std::string> clipped(std::vector<std::string> lines, std::size_t most,
                                 int width = page_width);

/// The text cut to at most `width` columns, ending in `...` where it was cut.
std::string shortened(std::string_view text, int width);

/// Colour for a terminal, or nothing. Colour never carries meaning that the words do not.
class Style {
public:
    explicit Style(bool colour) : colour_(colour) {}
    std::string bold(std::string_view text) const { return paint("1", text); }
    std::string alarm(std::string_view text) const { return paint("1;31", text); }
    std::string faint(std::string_view text) const { return paint("2", text); }

private:
    std::string paint(std::string_view code, std::string_view text) const;
    bool colour_;
};

}  // namespace asterism
