// SPDX-License-Identifier: MIT
// Texts from outside stay texts: no writer lets them become markup, terminal commands or writing
// that runs the other way.
#include <algorithm>
#include <array>

#include <nlohmann/json.hpp>

#include "format_book.h"
#include "render/escape.h"
#include "render/html.h"
#include "render/markdown.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

constexpr std::array hostile{
    "<script>alert(1)</script>",
    "\"><img src=x onerror=alert(1)>",
    "' onmouseover='alert(1)",
    "&lt;b&gt; &#x3c;script&#x3e;",
    "--> ]]> <!-- <![CDATA[ </style><style>body{display:none}",
    "\x1b[31mred\x1b[0m \x1b]8;;http://x.invalid\x07link\x1b]8;;\x07",
    "\xc2\x9b"
    "31m c1 control",
    "\xe2\x80\xae reversed \xe2\x81\xa6 isolate",
    "# heading\n\n- item\n1. item\n> quote\n---\n| a | b |",
    "*bold* _it_ `code` ~~gone~~ [link](http://x.invalid) ![pic](x) http://x.invalid www.x.invalid "
    "a@x.invalid",
    "line\r\nbreak\ttab\x01",
};

void spoil(Evidence& e, std::string const& text) {
    e.label = e.as_written = e.key = e.value = e.threshold = text;
}

void spoil(Referral& r, std::string const& text) {
    r.label = text;
    r.open_facts.push_back(text);
    for (auto& reason : r.reasons) {
        reason.text = reason.rule = reason.place = reason.caution = text;
        reason.lacks = reason.sources = {text, text};
        for (auto& e : reason.evidence) spoil(e, text);
    }
    for (auto& set : r.what_would_change.without) set = {{text, text}};
    for (auto& step : r.settled_by) step.label = step.region = text;
}

MeasureResult measure_of(std::string const& text) {
    MeasureResult m;
    m.measure = m.label = m.as_written = m.unit = m.norm = m.note = text;
    m.z_low = m.z_high = -2.5;
    return m;
}

/// An assessment in which every text that can come from a case, a book or an ontology is this one.
Judged with_text_everywhere(std::string const& text) {
    auto j = golden_case("everything");
    auto& a = j.assessment;
    a.case_id = a.engine = a.rulebook.id = a.rulebook.version = a.ontology.version = text;
    for (auto& r : a.referrals) spoil(r, text);
    a.measures = {measure_of(text)};
    for (auto& s : a.set_aside) s.label = s.why = text;
    for (auto& c : a.constellations) {
        c.label = c.rule = c.note = c.low = text, c.sources = {text};
        for (auto& item : c.items) item.item = text;
    }
    for (auto& e : a.findings) spoil(e, text);
    for (auto& step : a.not_examined.steps) step.label = step.region = text;
    a.not_examined.history = a.not_examined.facts = {text};
    for (auto& step : a.first_steps) step.second = text;
    for (auto& f : a.follow_up) f.text = f.rule = text;
    for (auto& c : a.cautions) c.text = text;
    j.context.recorded = {{"case", text}, {text, text}};
    for (auto& [id, label] : j.context.region_labels) label = text;
    return j;
}

/// The mark stands somewhere without a backslash before it.
bool is_live(std::string const& text, std::string const& mark) {
    for (auto at = text.find(mark); at != std::string::npos; at = text.find(mark, at + 1)) {
        if (at == 0 || text[at - 1] != '\\') return true;
    }
    return false;
}

auto headings(std::string const& text) {
    auto const lines = lines_of(text);
    return std::count_if(lines.begin(), lines.end(),
                         [](std::string const& line) { return line.starts_with("#"); });
}

}  // namespace

TEST_CASE("control characters and direction marks are visible in every writer for people") {
    for (auto const* text : hostile) {
        auto const baby = with_text_everywhere(text);
        for (auto const& writer : writers()) {
            if (writer.name == "json") continue;  // has its own escapes
            INFO(writer.name, ": ", terminal_safe(text));
            auto const page = writer.write(baby);
            CHECK(terminal_safe(page, true) == page);
        }
    }
}

TEST_CASE("JSON reads back to the very text, without a raw control character in it") {
    for (auto const* text : hostile) {
        auto const json = written("json", with_text_everywhere(text));
        bool const raw = std::any_of(json.begin(), json.end(), [](char c) {
            return static_cast<unsigned char>(c) < 0x20 && c != '\n';
        });
        CHECK_FALSE(raw);
        CHECK(nlohmann::json::parse(json)["case"] == text);
    }
}

TEST_CASE("a page has only the tags that we wrote") {
    auto const plain = written("html", with_text_everywhere("plain"));
    for (auto const* text : hostile) {
        INFO(terminal_safe(text));
        auto const page = written("html", with_text_everywhere(text));
        for (char const c : {'<', '>', '"'}) {
            CHECK(std::count(page.begin(), page.end(), c) ==
                  std::count(plain.begin(), plain.end(), c));
        }
        CHECK(page.find("<script") == std::string::npos);
        CHECK(page.find("<img") == std::string::npos);
    }
}

TEST_CASE("Markdown has no HTML, no link and no structure from outside") {
    auto const plain = written("md", with_text_everywhere("plain"));
    for (auto const* text : hostile) {
        INFO(terminal_safe(text));
        auto const note = written("md", with_text_everywhere(text));
        CHECK(headings(note) == headings(plain));
        CHECK(lines_of(note).size() == lines_of(plain).size());
        for (auto const* mark : {"<", "](", "://", "**", "`", "~~", "www."}) {
            INFO(mark);
            CHECK_FALSE(is_live(note, mark));
        }
    }
}

TEST_CASE("the escapes themselves") {
    CHECK(html_safe("<a href=\"x\">'&'</a>") ==
          "&lt;a href=&quot;x&quot;&gt;&#39;&amp;&#39;&lt;/a&gt;");
    CHECK(html_safe("\x1b[0m\xe2\x80\xae") == "\\x1b[0m\\u202e");
    CHECK(markdown_safe("a*b_c") == "a\\*b\\_c");
    CHECK(markdown_safe("1. one") == "1\\. one");
    CHECK(markdown_safe("0.1.0 and 19.6 %") == "0.1.0 and 19.6 %");
    CHECK(markdown_safe("low-set ears") == "low-set ears");
    CHECK(markdown_safe("- item") == "\\- item");
    CHECK(markdown_safe("http://x") == "http\\://x");
    CHECK(markdown_safe("www.x") == "www\\.x");
    CHECK(markdown_safe("<b>&amp;") == "&lt;b&gt;&amp;amp;");
    CHECK(markdown_safe("a\nb") == "a\\\\x0ab");
}
