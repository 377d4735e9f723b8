// SPDX-License-Identifier: MIT
#include "rulebook/release_notes.h"

#include <algorithm>

#include <fmt/format.h>

#include "rulebook/release.h"

namespace asterism {

namespace {

constexpr std::string_view heading_mark = "## ";
constexpr std::string_view day_mark = "(in force from ";

std::string_view trimmed(std::string_view text) {
    auto const begin = text.find_first_not_of(" \t\r");
    if (begin == std::string_view::npos) return {};
    return text.substr(begin, text.find_last_not_of(" \t\r") - begin + 1);
}

class NotesReader {
public:
    NotesReader(SourcePtr const& source, Diagnostics& diagnostics)
        : source_(source), diagnostics_(diagnostics) {}

    std::vector<ReleaseNotes> read() {
        auto const text = source_->text();
        for (std::size_t at = 0; at < text.size();) {
            auto const end = std::min(text.find('\n', at), text.size());
            line(text.substr(at, end - at), static_cast<std::uint32_t>(at));
            at = end + 1;
        }
        check_last();
        return std::move(notes_);
    }

private:
    void line(std::string_view text, std::uint32_t offset) {
        if (text.starts_with(heading_mark)) return heading(text, offset);
        if (notes_.empty()) return;
        auto const content = trimmed(text);
        bool const item = content.starts_with("- ") || content.starts_with("* ");
        if (content.empty()) {
            joined_ = false;
        } else if (item || !joined_) {
            notes_.back().changes.emplace_back(item ? trimmed(content.substr(2)) : content);
            joined_ = true;
        } else {
            notes_.back().changes.back() += " " + std::string(content);
        }
    }

    void heading(std::string_view text, std::uint32_t offset) {
        check_last();
        auto const title = trimmed(text.substr(heading_mark.size()));
        auto const version = title.substr(0, title.find(' '));
        auto const begin = offset + static_cast<std::uint32_t>(heading_mark.size());
        ReleaseNotes notes;
        notes.version = {std::string(version),
                         {source_, begin, begin + static_cast<std::uint32_t>(version.size())}};
        auto const day = title.find(day_mark);
        if (day != std::string_view::npos) {
            auto const rest = title.substr(day + day_mark.size());
            notes.day = rest.substr(0, rest.find(')'));
        }
        check(notes);
        notes_.push_back(std::move(notes));
        joined_ = false;
    }

    void check(ReleaseNotes const& notes) {
        if (!parse_version(notes.version.text)) {
            diagnostics_.error(
                "bad-version", notes.version.span,
                fmt::format("expected a version such as `1.2.3`, found `{}`", notes.version.text));
        }
        for (auto const& other : notes_) {
            if (other.version.text == notes.version.text)
                diagnostics_.error("second-notes", notes.version.span,
                                   fmt::format("version `{}` stands twice", notes.version.text));
        }
    }

    void check_last() {
        if (notes_.empty() || !notes_.back().changes.empty()) return;
        diagnostics_.error(
            "empty-notes", notes_.back().version.span,
            fmt::format("nothing is said of version `{}`", notes_.back().version.text));
    }

    SourcePtr const& source_;
    Diagnostics& diagnostics_;
    std::vector<ReleaseNotes> notes_;
    bool joined_ = false;  ///< the next line goes on with the last change
};

}  // namespace

std::vector<ReleaseNotes> read_release_notes(SourcePtr const& changelog, Diagnostics& diagnostics) {
    return NotesReader(changelog, diagnostics).read();
}

std::vector<ReleaseNotes> up_to(std::vector<ReleaseNotes> const& notes, std::string_view version) {
    auto const last = parse_version(version);
    std::vector<ReleaseNotes> result;
    for (auto const& one : notes) {
        if (!last || parse_version(one.version.text) <= last) result.push_back(one);
    }
    return result;
}

}  // namespace asterism
