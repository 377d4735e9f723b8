// SPDX-License-Identifier: MIT
#include "render/layout.h"

#include <fmt/format.h>

#include "base/fold.h"
#include "base/number.h"

namespace asterism {

namespace {

bool continues_a_character(char byte) { return (static_cast<unsigned char>(byte) & 0xC0) == 0x80; }

/// The longest head of a word that fits; at least one character, so that breaking always ends.
std::string_view head_that_fits(std::string_view word, int width) {
    std::size_t end = 0;
    while (end < word.size()) {
        auto next = end + 1;
        while (next < word.size() && continues_a_character(word[next])) ++next;
        if (end > 0 && display_width(word.substr(0, next)) > width) break;
        end = next;
    }
    return word.substr(0, end);
}

class Wrapper {
public:
    Wrapper(std::string_view first, std::string_view rest, int width)
        : rest_(rest), width_(width), line_(first) {}

    void add(std::string_view word) {
        if (!fresh_ && column() + 1 + display_width(word) > width_) next_line();
        while (display_width(word) > width_ - column() - (fresh_ ? 0 : 1)) {
            auto const head = head_that_fits(word, width_ - column());
            append(head);
            word.remove_prefix(head.size());
            if (word.empty()) return;
            next_line();
        }
        append(word);
    }

    std::vector<std::string> take() {
        lines_.push_back(std::move(line_));
        return std::move(lines_);
    }

private:
    int column() const { return display_width(line_); }
    void append(std::string_view word) {
        if (!fresh_) line_ += ' ';
        line_ += word;
        fresh_ = false;
    }
    void next_line() {
        lines_.push_back(std::move(line_));
        line_ = rest_;
        fresh_ = true;
    }

    std::string rest_;
    int width_;
    std::string line_;
    bool fresh_ = true;
    std::vector<std::string> lines_;
};

}  // namespace

std::vector<std::string> wrapped_lines(std::string_view text, std::string_view first,
                                       std::string_view rest, int width) {
    Wrapper wrapper(first, rest, width);
    text = trim(text);
    while (!text.empty()) {
        auto const word = text.substr(0, text.find_first_of(" \n"));
        wrapper.add(word);
        text = trim(text.substr(word.size()));
    }
    return wrapper.take();
}

std::string wrapped(std::string_view text, std::string_view first, std::string_view rest,
                    int width) {
    std::string result;
    for (auto const& line : wrapped_lines(text, first, rest, width)) result += line + "\n";
    return result;
}

std::string shortened(std::string_view text, int width) {
    if (display_width(text) <= width) return std::string(text);
    auto const head = head_that_fits(text, width - 4);
    return std::string(head.substr(0, head.find_last_not_of(" ,;") + 1)) + " ...";
}

std::vector<std::string> clipped(std::vector<std::string> lines, std::size_t most, int width) {
    if (lines.size() <= most) return lines;
    lines.resize(most);
    auto& last = lines.back();
    last = display_width(last) + 4 <= width ? last + " ..." : shortened(last + "....", width);
    return lines;
}

std::string Style::paint(std::string_view code, std::string_view text) const {
    return colour_ ? fmt::format("\x1b[{}m{}\x1b[0m", code, text) : std::string(text);
}

}  // namespace asterism
