// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include "render/assessment_html.h"
#include "render/assessment_words.h"
#include "render/comparison.h"
#include "render/html.h"

namespace asterism {

namespace {

constexpr auto extra_style =
    R"(.change { margin: .9rem 0; padding: .6rem 1rem; background: var(--panel);
  border-left: 6px solid var(--rule); border-radius: .3rem; break-inside: avoid; }
.change h4 { margin: 0; font-size: 1rem; }
.place { margin: 0; color: var(--soft); font-size: .85rem; }
.change dl { margin: .4rem 0 0; }
.change dt { font-weight: 600; }
.change dd { margin: .1rem 0 .2rem; padding-left: .6rem; border-left: 3px solid var(--rule); }
.change dd span { color: var(--soft); }
dd.is { border-left-color: var(--amber); }
h3 { margin-top: 1.2rem; }
)";

class HtmlWriter {
public:
    explicit HtmlWriter(BookComparison const& c) : c_(c) {}

    std::string write() {
        header();
        m_.open("main").new_line();
        written();
        judged();
        m_.close().new_line();
        m_.open("footer").element("p", safety_text()).new_line();
        m_.element("p", fmt::format("ontology {} ({})", c_.ontology_version,
                                    c_.ontology_digest.substr(0, 8)));
        return m_.take();
    }

private:
    void header() {
        Scope const header(m_, "header");
        m_.element("p", "Asterism: two rulebooks side by side", {{"class", "kicker"}});
        m_.element("h1", c_.any_change() ? "The books differ" : "The books are the same");
        m_.element("p", "Earlier: " + book_words(c_.before)).new_line();
        m_.element("p", "Later: " + book_words(c_.after)).new_line();
    }

    void written() {
        Scope const section(m_, "section", {{"aria-labelledby", "written"}});
        m_.element("h2", "What is written differently", {{"id", "written"}}).new_line();
        if (c_.differences.empty()) m_.element("p", "Nothing.");
        auto const& all = c_.differences;
        for (std::size_t begin = 0; begin < all.size();) {
            bool const new_part = begin == 0 || all[begin].part != all[begin - 1].part;
            if (new_part) m_.element("h3", part_words(all[begin].part)).new_line();
            auto end = begin;
            while (end < all.size() && all[end].part == all[begin].part &&
                   all[end].id == all[begin].id) {
                ++end;
            }
            thing(begin, end);
            begin = end;
        }
    }

    void thing(std::size_t begin, std::size_t end) {
        auto const& first = c_.differences[begin];
        Scope const article(m_, "article", {{"class", "change"}});
        m_.element("h4", first.label.empty() ? first.id : first.label + " (" + first.id + ")");
        m_.element("p", first.place, {{"class", "place"}}).new_line();
        Scope const list(m_, "dl");
        for (auto i = begin; i < end; ++i) {
            auto const& d = c_.differences[i];
            if (i == begin || aspect_words(c_.differences[i - 1]) != aspect_words(d))
                m_.element("dt", aspect_words(d));
            side("was", d.before);
            side("is", d.after);
            m_.new_line();
        }
    }

    void side(std::string name, std::string const& text) {
        if (text.empty()) return;
        m_.open("dd", {{"class", name}}).element("span", name + ": ").text(text).close();
    }

    void judged() {
        Scope const section(m_, "section", {{"aria-labelledby", "judged"}});
        m_.element("h2", "Which babies are judged differently", {{"id", "judged"}}).new_line();
        if (c_.sets.empty()) m_.element("p", "No babies were judged.");
        for (auto const& set : c_.sets) add(set);
    }

    void add(CaseSetComparison const& set) {
        m_.element("h3", set_words(set)).new_line();
        if (set.changed.empty()) return;
        m_.open("ul");
        for (auto const& count : set.counts) m_.element("li", count_words(count)).new_line();
        m_.close();
        bool const all = set.origin != CaseSet::Origin::newborns;
        auto const shown = all ? set.changed.size() : std::min(set.changed.size(), newborns_shown);
        for (std::size_t i = 0; i < shown; ++i) add(set.changed[i]);
        if (shown < set.changed.size()) {
            m_.element("p", fmt::format("and {} more", set.changed.size() - shown)).new_line();
        }
    }

    void add(BabyChange const& baby) {
        Scope const article(m_, "article", {{"class", "change"}});
        m_.element("h4", baby.baby);
        if (!baby.story.empty()) m_.element("p", baby.story);
        m_.element("p", "Found: " + baby.findings, {{"class", "place"}}).new_line();
        Scope const list(m_, "ul");
        for (auto const& change : baby.changes) m_.element("li", change_words(change)).new_line();
    }

    BookComparison const& c_;
    Markup m_;
};

}  // namespace

std::string comparison_html(BookComparison const& comparison) {
    auto const title = fmt::format("{} {} and {}", comparison.after.id, comparison.before.version,
                                   comparison.after.version);
    return html_page(
        {title, assessment_html_style() + extra_style, HtmlWriter(comparison).write()});
}

}  // namespace asterism
