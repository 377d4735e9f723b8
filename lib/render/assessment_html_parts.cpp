// SPDX-License-Identifier: MIT
#include "render/assessment_html_parts.h"

#include <algorithm>

#include <fmt/format.h>

#include "render/assessment_words.h"

namespace asterism {

namespace {

void pair(Markup& m, std::string_view name, std::string_view value) {
    if (!value.empty()) m.element("dt", name).element("dd", value).new_line();
}

std::string class_and_key(Evidence const& e) {
    std::string text = evidence_as_written(e);
    if (e.finding_class) text += fmt::format(" [{}]", class_words(*e.finding_class));
    if (!e.key.empty()) text += ", counts as " + e.key;
    if (e.kind == Evidence::Kind::measure && !e.value.empty()) {
        text += fmt::format(" ({})", e.threshold);
    }
    return text;
}

void reason_details(Markup& m, Reason const& reason) {
    Scope const details(m, "details");
    {
        Scope const summary(m, "summary");
        m.text(reason.text);
        m.element("span", "Seen: " + evidence_list(reason.evidence), {{"class", "seen"}});
    }
    m.new_line();
    Scope const more(m, "dl", {{"class", "more"}});
    for (auto const& e : reason.evidence) pair(m, "Seen", class_and_key(e));
    pair(m, "Caution", reason.caution);
    pair(m, "Rule", fmt::format("{} ({})", reason.rule, reason.place));
    pair(m, "Rests on", strength_words(reason.strength));
    pair(m, "Sources", fmt::format("{}", fmt::join(reason.sources, ", ")));
}

std::string_view state_words(Truth reached) {
    switch (reached) {
        case Truth::yes: return "reached";
        case Truth::no: return "not reached";
        case Truth::unknown: return "open";
    }
    return "";
}

std::string items_with(ConstellationResult const& c, Truth value) {
    std::vector<std::string> items;
    for (auto const& i : c.items) {
        if (i.value == value) items.push_back(i.item);
    }
    return first_of(items, items.size());
}

void constellation_table(Markup& m, std::vector<ConstellationResult const*> const& list,
                         std::string_view caption) {
    Table table(m, caption,
                {"Counting rule", "For", "Count", "Counted", "Not examined", "Note", "Sources"});
    for (auto const* c : list) {
        table.row({c->label, c->service,
                   fmt::format("{} of {}, {}", c->low, c->possible, state_words(c->reached)),
                   items_with(*c, Truth::yes), items_with(*c, Truth::unknown), c->note,
                   fmt::format("{}", fmt::join(c->sources, ", "))});
    }
}

}  // namespace

Table::Table(Markup& markup, std::string_view caption, std::vector<std::string> const& columns)
    : m_(markup) {
    m_.open("div", {{"class", "scroll"},
                    {"tabindex", "0"},
                    {"role", "group"},
                    {"aria-label", columns.front() + " table"}});
    m_.open("table");
    if (!caption.empty()) m_.element("caption", caption);
    m_.open("thead").open("tr");
    for (auto const& column : columns) m_.element("th", column, {{"scope", "col"}});
    m_.close().close().new_line().open("tbody").new_line();
}

Table::~Table() { m_.close().close().close().new_line(); }

void Table::row(std::vector<std::string> const& cells) {
    Scope const row(m_, "tr");
    for (std::size_t i = 0; i < cells.size(); ++i) {
        if (i == 0)
            m_.element("th", cells[i], {{"scope", "row"}});
        else
            m_.element("td", cells[i]);
    }
}

void plain_list(Markup& m, std::vector<std::string> const& texts, std::string style) {
    Scope const list(m, "ul", {{"class", std::move(style)}});
    for (auto const& text : texts) m.element("li", text).new_line();
}

void suggestion_card(Markup& m, SuggestionGroup const& group) {
    auto const urgency = std::string(to_text(*group.referrals.front()->urgency));
    Scope const card(m, "article", {{"class", "group " + urgency}});
    m.element("h3", heading_of(group)).new_line();
    for (auto const* reason : group.reasons) reason_details(m, *reason);
    for (auto const* reason : group.repeated) {
        m.element("p", fmt::format("Also: {} [{}]", reason->text, reason->rule)).new_line();
    }
}

void finding_table(Markup& m, std::vector<FoundInRegion> const& found) {
    Table table(m, "Findings, by region", {"Region", "Finding", "Class", "Known how"});
    for (auto const& region : found) {
        auto const number = region.number ? std::to_string(region.number) + " " : "";
        for (auto const* e : region.findings) {
            auto const weight = e->finding_class ? class_words(*e->finding_class) : "not classed";
            table.row(
                {number + region.label, evidence_as_written(*e), std::string(weight), e->how});
        }
    }
}

void map_legend(Markup& m) {
    Scope const caption(m, "figcaption");
    m.text("Numbers lead to the table. Weightiest finding of a region: ");
    auto const key = [&](char const* style, char const* name) {
        m.element("span", "", {{"class", std::string("key ") + style}}).text(name);
    };
    key("red-flag", " red flag, ");
    key("major", " major anomaly, ");
    key("minor", " minor variant, ");
    key("normal", " other. ");
    key("open", " not fully examined.");
}

void constellation_section(Markup& m, Assessment const& a) {
    if (a.constellations.empty()) return;
    Scope const section(m, "section", {{"aria-labelledby", "consider"}});
    m.element("h2", "For the service to consider", {{"id", "consider"}}).new_line();
    m.element("p", "A counting rule that is reached is not a diagnosis.").new_line();
    std::vector<ConstellationResult const*> reached, others;
    for (auto const& c : a.constellations) {
        (c.reached == Truth::yes ? reached : others).push_back(&c);
    }
    if (reached.empty())
        m.element("p", "No counting rule was reached.").new_line();
    else
        constellation_table(m, reached, "Counting rules that were reached");
    if (others.empty()) return;
    Scope const details(m, "details");
    m.element("summary", fmt::format("With some items, not reached or open: {}", others.size()));
    constellation_table(m, others, "Counting rules with some items");
}

void measure_section(Markup& m, Assessment const& a, AssessmentContext const& context) {
    if (a.measures.empty()) return;
    Scope const section(m, "section", {{"aria-labelledby", "measures"}});
    m.element("h2", "Measures", {{"id", "measures"}}).new_line();
    {
        Table table(m, "", {"Measure", "As written", "z", "Centile", "Norm", "Note"});
        for (auto const& r : a.measures) {
            table.row({r.label, r.as_written, z_words(r), centile_words(r), r.norm, r.note});
        }
    }
    if (context.charts.empty()) return;
    Scope const charts(m, "div", {{"class", "charts"}});
    for (auto const& chart : context.charts) {
        m.empty("img", {{"src", svg_address(chart.svg)}, {"alt", chart.title}}).new_line();
    }
}

}  // namespace asterism
