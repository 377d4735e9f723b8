// SPDX-License-Identifier: MIT
#include "base/source.h"

#include <algorithm>
#include <tuple>

#include <fmt/format.h>

namespace asterism {

namespace {

bool starts_code_point(char byte) { return (static_cast<unsigned char>(byte) & 0xC0) != 0x80; }

}  // namespace

Source::Source(std::string name, std::string text, std::uint32_t first_line)
    : name_(std::move(name)), owned_(std::move(text)), text_(owned_), first_line_(first_line) {}

std::shared_ptr<Source const> Source::over(std::string name, std::string_view text) {
    auto const source = std::make_shared<Source>(std::move(name), std::string(), 1);
    source->text_ = text;
    return source;
}

std::vector<std::uint32_t> const& Source::starts() const {
    std::call_once(counted_, [this] {
        starts_.push_back(0);
        for (auto at = text_.find('\n'); at != text_.npos; at = text_.find('\n', at + 1))
            starts_.push_back(static_cast<std::uint32_t>(at + 1));
    });
    return starts_;
}

Position Source::position(std::uint32_t offset) const {
    offset = std::min(offset, static_cast<std::uint32_t>(text_.size()));
    auto const& lines = starts();
    auto const next = std::upper_bound(lines.begin(), lines.end(), offset);
    auto const start = *std::prev(next);
    auto const column =
        std::count_if(text_.begin() + start, text_.begin() + offset, starts_code_point);
    return {static_cast<std::uint32_t>(next - lines.begin()) + first_line_ - 1,
            static_cast<std::uint32_t>(column + 1)};
}

std::string_view Source::line(std::uint32_t number) const {
    auto const& lines = starts();
    if (number < first_line_ || number - first_line_ >= lines.size()) return {};
    auto rest = text_.substr(lines[number - first_line_]);
    rest = rest.substr(0, rest.find('\n'));
    if (!rest.empty() && rest.back() == '\r') rest.remove_suffix(1);
    return rest;
}

std::uint32_t Source::line_start(std::uint32_t index) const {
    auto const& lines = starts();
    return index < lines.size() ? lines[index] : static_cast<std::uint32_t>(text_.size());
}

SourcePtr make_source(std::string name, std::string text, std::uint32_t first_line) {
    return std::make_shared<Source const>(std::move(name), std::move(text), first_line);
}

std::string Span::place() const {
    if (!known()) return {};
    auto const at = position();
    return fmt::format("{}:{}:{}", source->name(), at.line, at.column);
}

bool before(Span const& a, Span const& b) {
    std::string_view const a_name = a.known() ? std::string_view(a.source->name()) : "";
    std::string_view const b_name = b.known() ? std::string_view(b.source->name()) : "";
    auto const a_piece = a.known() ? a.source->first_line() : 0;
    auto const b_piece = b.known() ? b.source->first_line() : 0;
    return std::tie(a_name, a_piece, a.begin, a.end) < std::tie(b_name, b_piece, b.begin, b.end);
}

}  // namespace asterism
