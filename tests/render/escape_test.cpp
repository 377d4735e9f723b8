// SPDX-License-Identifier: MIT
/// Text from outside made inert: for a terminal, in HTML, in Markdown.
#include "render/escape.h"

#include "render/html.h"
#include "render/markdown.h"
#include "testing.h"

using namespace asterism;

TEST_CASE("every control character becomes visible, everything else stays") {
    for (int byte = 0; byte < 0x20; ++byte) {
        std::string const text(1, static_cast<char>(byte));
        CAPTURE(byte);
        CHECK(terminal_safe("a" + text + "b").size() == 6);
        CHECK(terminal_safe(text).substr(0, 2) == "\\x");
    }
    CHECK(terminal_safe("\x7f") == "\\x7f");
    CHECK(terminal_safe("plain, \u00e9\u4e2d\U0001F476 text") ==
          "plain, \u00e9\u4e2d\U0001F476 text");
}

TEST_CASE("newlines are kept only when asked") {
    CHECK(terminal_safe("a\nb") == "a\\x0ab");
    CHECK(terminal_safe("a\nb", true) == "a\nb");
    CHECK(terminal_safe("a\rb", true) == "a\\x0db");
}

TEST_CASE("C1 controls and marks that turn the writing become visible") {
    CHECK(terminal_safe("\xc2\x9b[31m") == "\\x9b[31m");
    CHECK(terminal_safe("\xc2\x80\xc2\x9f") == "\\x80\\x9f");
    CHECK(terminal_safe("\xc2\xa0") == "\xc2\xa0");  // a no-break space is no control
    for (auto const* mark : {"\u200e", "\u200f", "\u202a", "\u202b", "\u202c", "\u202d", "\u202e",
                             "\u2066", "\u2067", "\u2068", "\u2069", "\u2028", "\u2029"}) {
        auto const safe = terminal_safe(mark);
        CHECK(safe.size() == 6);
        CHECK(safe.substr(0, 2) == "\\u");
    }
    CHECK(terminal_safe("\u2014\u2019") == "\u2014\u2019");
}

TEST_CASE("invisible characters become visible (Unicode 15: Default_Ignorable_Code_Point)") {
    for (auto const* mark :
         {"\u00ad", "\u034f", "\u061c", "\u115f", "\u180e", "\u200b", "\u200c", "\u200d", "\u2060",
          "\u2063", "\u206a", "\u3164", "\ufe0f", "\ufeff", "\uffa0", "\ufffb"}) {
        auto const safe = terminal_safe(std::string("a") + mark + "b");
        CAPTURE(safe);
        CHECK(safe.size() == 8);
        CHECK(safe.substr(0, 3) == "a\\u");
    }
    CHECK(terminal_safe("\U000E0041") == "\\ue0041");  // a tag of plane 14
    CHECK(terminal_safe("\u00ac\u00ae\u061b\u2010\u3163") == "\u00ac\u00ae\u061b\u2010\u3163");
}

TEST_CASE("a cut character at the end is no reason to read past it") {
    CHECK(terminal_safe("\xe2\x80") == "\xe2\x80");
    CHECK(terminal_safe("\xc2") == "\xc2");
    CHECK(terminal_safe("\xe2") == "\xe2");
}

TEST_CASE("making safe twice changes nothing more") {
    for (auto const* text : {"\x1b[0m", "\u202e", "a\tb", "plain"}) {
        auto const once = terminal_safe(text);
        CHECK(terminal_safe(once) == once);
    }
}

TEST_CASE("HTML: the five characters, and controls") {
    CHECK(html_safe("<script>alert('x & \"y\"')</script>") ==
          "&lt;script&gt;alert(&#39;x &amp; &quot;y&quot;&#39;)&lt;/script&gt;");
    CHECK(html_safe("\x1b[31m") == "\\x1b[31m");
    CHECK(html_safe("caf\u00e9") == "caf\u00e9");
    CHECK(html_safe("") == "");
}

TEST_CASE("markup closes what it opened and escapes what it is given") {
    Markup m;
    m.open("p", {{"class", "a\"b"}}).text("1 < 2").open("b").text("&");
    CHECK(m.take() == "<p class=\"a&quot;b\">1 &lt; 2<b>&amp;</b></p>");
    Markup element;
    element.element("td", "<x>", {{"title", "'"}});
    CHECK(element.take() == "<td title=\"&#39;\">&lt;x&gt;</td>");
    Markup scoped;
    {
        Scope const list(scoped, "ul");
        scoped.element("li", "one");
    }
    CHECK(scoped.take() == "<ul><li>one</li></ul>");
}

TEST_CASE("a page forbids scripts and fetching, and escapes its title") {
    auto const page = html_page({"<t>", "p{}", "<p>x</p>"});
    CHECK(page.find("<!DOCTYPE html>") == 0);
    CHECK(page.find("default-src &#39;none&#39;") != std::string::npos);
    CHECK(page.find("<title>&lt;t&gt;</title>") != std::string::npos);
    CHECK(page.find("<script") == std::string::npos);
    CHECK(page.find("http://") == std::string::npos);
    CHECK(page.find("https://") == std::string::npos);
}

TEST_CASE("Markdown: what it could obey is escaped") {
    CHECK(markdown_safe("*a* _b_ `c`") == "\\*a\\* \\_b\\_ \\`c\\`");
    CHECK(markdown_safe("[x](y)") == "\\[x\\]\\(y\\)");
    CHECK(markdown_safe("<b>&") == "&lt;b&gt;&amp;");
    CHECK(markdown_safe("# head") == "\\# head");
    CHECK(markdown_safe("- item") == "\\- item");
    CHECK(markdown_safe("low-set ears") == "low-set ears");
    CHECK(markdown_safe("1. item") == "1\\. item");
    CHECK(markdown_safe("29.5 cm") == "29.5 cm");
    CHECK(markdown_safe("http://x") == "http\\://x");
    CHECK(markdown_safe("www.x.org") == "www\\.x.org");
    CHECK(markdown_safe("a | b") == "a \\| b");
    CHECK(markdown_safe("a\nb") == "a\\\\x0ab");
}
