// SPDX-License-Identifier: MIT
#include <algorithm>

#include <fmt/format.h>

#include "render/assessment_html.h"
#include "render/assessment_words.h"
#include "render/handbook.h"
#include "render/handbook_style.h"
#include "render/html.h"

namespace asterism {

namespace {

class HtmlWriter {
public:
    explicit HtmlWriter(Handbook const& book) : book_(book) {}

    std::string write() {
        header();
        m_.open("main").new_line();
        contents();
        for (auto const& chapter : book_.chapters) section(chapter, 2);
        index();
        m_.close().new_line();
        m_.open("footer").element("p", safety_text()).new_line();
        for (auto const& line : book_.about) m_.element("p", line).new_line();
        return m_.take();
    }

private:
    static std::string heading(int level) { return fmt::format("h{}", std::min(level, 6)); }

    static std::string styled(std::string const& name, std::string const& kind) {
        return kind.empty() ? name : name + " " + kind;
    }

    void link(std::string_view text, std::string const& anchor) {
        if (anchor.empty())
            m_.text(text);
        else
            m_.element("a", text, {{"href", "#" + anchor}});
    }

    void header() {
        m_.open("header").element("p", "Asterism: the rulebook as a booklet",
                                  {{"class", "kicker"}});
        m_.element("h1", book_.title).new_line();
        for (auto const& line : book_.about) m_.element("p", line, {{"class", "about"}}).new_line();
        m_.close().new_line();
    }

    void contents() {
        Scope const nav(m_, "nav", {{"aria-labelledby", "contents"}});
        m_.element("h2", "Contents", {{"id", "contents"}}).new_line();
        Scope const list(m_, "ul", {{"class", "contents"}});
        for (auto const& chapter : book_.chapters) {
            Scope const item(m_, "li");
            link(chapter.title, chapter.anchor);
            if (!chapter.sections.empty()) parts(chapter);
        }
        m_.open("li");
        link("Index", "index");
        m_.close();
    }

    void parts(HandbookSection const& chapter) {
        m_.open("p", {{"class", "parts"}});
        for (auto const& part : chapter.sections) {
            link(part.title, part.anchor);
            m_.text(&part == &chapter.sections.back() ? "" : " · ");
        }
        m_.close();
    }

    void section(HandbookSection const& s, int level) {
        auto const style = fmt::format("level-{}{}", level, s.compact ? " compact" : "");
        Scope const section(m_, "section", {{"class", style}, {"aria-labelledby", s.anchor}});
        m_.element(heading(level), s.title, {{"id", s.anchor}}).new_line();
        for (auto const& text : s.paragraphs) m_.element("p", text, {{"class", "how"}}).new_line();
        if (!s.entries.empty()) {
            Scope const entries(m_, "div", {{"class", "entries"}});
            for (auto const& one : s.entries) entry(one, level + 1);
        }
        for (auto const& part : s.sections) this->section(part, level + 1);
    }

    void entry(HandbookEntry const& e, int level) {
        Scope const article(m_, "article", {{"class", styled("entry", e.badge)}, {"id", e.anchor}});
        {
            Scope const title(m_, heading(level));
            if (!e.number.empty()) m_.element("span", e.number, {{"class", "no"}}).text(" ");
            m_.text(e.title);
            if (!e.badge_words.empty()) {
                m_.text(" ").element("span", e.badge_words, {{"class", styled("badge", e.badge)}});
            }
        }
        for (auto const& clause : e.clauses) top_clause(clause);
        for (auto const& text : e.paragraphs) m_.element("p", text);
        if (!e.rows.empty()) rows(e);
        m_.new_line();
    }

    void top_clause(HandbookClause const& clause) {
        m_.element("p", clause.text, {{"class", "clause"}});
        if (!clause.parts.empty()) clause_list(clause);
    }

    void clause_list(HandbookClause const& clause) {
        Scope const list(m_, "ul", {{"class", "clause"}});
        for (auto const& part : clause.parts) {
            Scope const item(m_, "li");
            m_.text(part.text);
            if (!part.parts.empty()) clause_list(part);
        }
    }

    void rows(HandbookEntry const& e) {
        Scope const facts(m_, "p", {{"class", "facts"}});
        for (auto const& [name, links] : e.rows) {
            m_.element("b", name).text(" ");
            for (auto const& one : links) {
                link(one.text, one.anchor);
                m_.text(handbook_stop(one, &one == &links.back()));
            }
        }
    }

    void index() {
        Scope const section(m_, "section",
                            {{"class", "level-2 index"}, {"aria-labelledby", "index"}});
        m_.element("h2", "Index", {{"id", "index"}}).new_line();
        m_.element("p", "Every name of a finding, with its number.", {{"class", "how"}}).new_line();
        for (auto const& [letter, links] : book_.index) {
            m_.element("h3", letter).new_line();
            Scope const list(m_, "ul");
            for (auto const& one : links) {
                Scope const item(m_, "li");
                link(one.text, one.anchor);
            }
            m_.new_line();
        }
    }

    Handbook const& book_;
    Markup m_;
};

}  // namespace

std::string handbook_html(Handbook const& handbook) {
    return html_page(
        {handbook.title, assessment_html_style() + handbook_style, HtmlWriter(handbook).write()});
}

}  // namespace asterism
