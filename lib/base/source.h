// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <memory>
#include <mutex>
#include <string>
#include <string_view>
#include <vector>

namespace asterism {

/// A place as people count it: line and column start at 1, columns are code points, not bytes.
struct Position {
    std::uint32_t line = 1;
    std::uint32_t column = 1;
};

/// One text that a person wrote (a file, standard input, the arguments), kept whole so that any
/// message can show the line it speaks of. Immutable; shared by everything that was read from it.
class Source {
public:
    /// `first_line`: what the first line is called, for a text that is a piece of a larger one.
    Source(std::string name, std::string text, std::uint32_t first_line = 1);
    /// Over text that outlives the source, such as that carried in the program: nothing is copied.
    static std::shared_ptr<Source const> over(std::string name, std::string_view text);
    Source(Source const&) = delete;
    Source& operator=(Source const&) = delete;

    std::string const& name() const { return name_; }
    std::string_view text() const { return text_; }
    std::uint32_t first_line() const { return first_line_; }

    /// Line and column of a byte offset; an offset past the end is the end.
    Position position(std::uint32_t offset) const;
    /// The text of a line (counted from 1) without its line end; empty when there is no such line.
    std::string_view line(std::uint32_t number) const;
    /// Byte offset of a line's first byte (counted from 0); the end of the text when there is none.
    std::uint32_t line_start(std::uint32_t index) const;

private:
    /// Offsets of the lines; counted when a place is first asked for, which most texts never are.
    std::vector<std::uint32_t> const& starts() const;

    std::string name_;
    std::string owned_;
    std::string_view text_;
    std::uint32_t first_line_;
    mutable std::once_flag counted_;
    mutable std::vector<std::uint32_t> starts_;
};

using SourcePtr = std::shared_ptr<Source const>;

SourcePtr make_source(std::string name, std::string text, std::uint32_t first_line = 1);

/// A half-open byte range of a source. A default span points nowhere and prints no place.
struct Span {
    SourcePtr source;
    std::uint32_t begin = 0;
    std::uint32_t end = 0;

    bool known() const { return source != nullptr; }
    Position position() const { return known() ? source->position(begin) : Position{}; }
    /// `name:line:column`, or an empty text for a span that points nowhere.
    std::string place() const;
};

/// Orders spans by source name, then by line and offset.
bool before(Span const& a, Span const& b);

/// A piece of text together with where it was written.
struct Word {
    std::string text;
    Span span;

    bool empty() const { return text.empty(); }
};

}  // namespace asterism
