// SPDX-License-Identifier: MIT
#include <algorithm>

#include <fmt/format.h>

#include "render/assessment_words.h"
#include "render/handbook.h"
#include "render/markdown.h"

namespace asterism {

namespace {

class MarkdownWriter {
public:
    explicit MarkdownWriter(Handbook const& book) : book_(book) {}

    std::string write() {
        out_ = "# " + markdown_safe(book_.title) + "\n\n";
        for (auto const& line : book_.about) out_ += "- " + markdown_safe(line) + "\n";
        for (auto const& chapter : book_.chapters) section(chapter, 2);
        out_ += "\n## Index\n";
        for (auto const& [letter, links] : book_.index) {
            out_ += "\n### " + markdown_safe(letter) + "\n\n";
            for (auto const& link : links) out_ += "- " + markdown_safe(link.text) + "\n";
        }
        return out_ + "\n" + markdown_safe(safety_text()) + "\n";
    }

private:
    void paragraph(std::string const& text) { out_ += "\n" + markdown_safe(text) + "\n"; }

    void heading(int level, std::string const& text) {
        out_ += "\n" + std::string(static_cast<std::size_t>(std::min(level, 6)), '#') + " " + text +
                "\n";
    }

    void section(HandbookSection const& s, int level) {
        heading(level, markdown_safe(s.title));
        for (auto const& text : s.paragraphs) paragraph(text);
        if (s.compact && !s.entries.empty()) out_ += "\n";
        for (auto const& one : s.entries) {
            if (s.compact)
                line(one);
            else
                entry(one, level + 1);
        }
        for (auto const& part : s.sections) section(part, level + 1);
    }

    static std::string title(HandbookEntry const& e) {
        auto text = (e.number.empty() ? "" : e.number + " ") + e.title;
        if (!e.badge_words.empty()) text += " [" + e.badge_words + "]";
        return markdown_safe(text);
    }

    static std::string rows(HandbookEntry const& e) {
        std::string text;
        for (auto const& [name, links] : e.rows) {
            text += name + ": ";
            for (auto const& link : links) {
                text += link.text + handbook_stop(link, &link == &links.back());
            }
        }
        while (text.ends_with(' ')) text.pop_back();
        return markdown_safe(text);
    }

    void line(HandbookEntry const& e) {
        out_ += "- **" + title(e) + "**";
        for (auto const& text : e.paragraphs) out_ += " " + markdown_safe(text);
        if (!e.rows.empty()) out_ += " " + rows(e);
        out_ += "\n";
    }

    void entry(HandbookEntry const& e, int level) {
        heading(level, title(e));
        for (auto const& clause : e.clauses) {
            paragraph(clause.text);
            if (!clause.parts.empty()) out_ += "\n";
            clauses(clause, 0);
        }
        for (auto const& text : e.paragraphs) paragraph(text);
        if (!e.rows.empty()) out_ += "\n" + rows(e) + "\n";
    }

    void clauses(HandbookClause const& clause, std::size_t depth) {
        for (auto const& part : clause.parts) {
            out_ += std::string(2 * depth, ' ') + "- " + markdown_safe(part.text) + "\n";
            clauses(part, depth + 1);
        }
    }

    Handbook const& book_;
    std::string out_;
};

}  // namespace

std::string handbook_markdown(Handbook const& handbook) { return MarkdownWriter(handbook).write(); }

}  // namespace asterism
