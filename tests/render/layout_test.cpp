// SPDX-License-Identifier: MIT
/// Lines of at most so many columns, and pages of at most so many lines.
#include "render/layout.h"
#include <algorithm>

#include "base/fold.h"
#include "render/layout_blocks.h"
#include "testing.h"

using namespace asterism;

using Texts = std::vector<std::string>;

TEST_CASE("words are wrapped with hanging indents") {
    CHECK(wrapped_lines("one two three", "- ", "  ", 9) == Texts{"- one two", "  three"});
    CHECK(wrapped("one two three", "- ", "  ", 9) == "- one two\n  three\n");
    CHECK(wrapped_lines("one", "", "", 80) == Texts{"one"});
    CHECK(wrapped_lines("", "- ", "", 80) == Texts{"- "});
    CHECK(wrapped_lines("  one \n two  ", "", "", 80) == Texts{"one two"});
}

TEST_CASE("no line is wider than asked, whatever the words and the indents") {
    std::string const text =
        "a supernumerary nipple and a "
        "pneumonoultramicroscopicsilicovolcanoconiosis of the "
        "\u4e2d\u6587\u4e2d\u6587\u4e2d\u6587\u4e2d\u6587\u4e2d\u6587\u4e2d\u6587"
        " kind";
    for (int width = 12; width <= 90; ++width) {
        CAPTURE(width);
        std::string joined;
        for (auto const& line : wrapped_lines(text, "  - ", "    ", width)) {
            CHECK(display_width(line) <= width);
            CHECK(is_utf8(line));
            joined += line;
        }
        auto const without_spaces = [](std::string all) {
            std::string kept;
            for (char const c : all)
                if (c != ' ') kept += c;
            return kept;
        };
        CHECK(without_spaces(joined) == "-" + without_spaces(text));
    }
}

TEST_CASE("wrapping ends, even where nothing fits") {
    CHECK(wrapped_lines("\u4e2d\u6587", "", "", 1) == Texts{"\u4e2d", "\u6587"});
    CHECK(wrapped_lines("abc", "", "", 1) == Texts{"a", "b", "c"});
}

TEST_CASE("shortened text says that it was cut") {
    CHECK(shortened("short", 20) == "short");
    CHECK(shortened("exactly ten", 11) == "exactly ten");
    auto const cut = shortened("one, two, three, four", 12);
    CHECK(cut == "one, two ...");
    CHECK(display_width(cut) <= 12);
    CHECK(display_width(shortened("\u4e2d\u6587\u4e2d\u6587\u4e2d\u6587", 9)) <= 9);
}

TEST_CASE("clipped lines end in dots where lines were dropped") {
    CHECK(clipped({"a", "b"}, 2) == Texts{"a", "b"});
    CHECK(clipped({"a", "b", "c"}, 2) == Texts{"a", "b ..."});
    auto const full = clipped({std::string(80, 'x'), "y"}, 1, 80);
    REQUIRE(full.size() == 1);
    CHECK(display_width(full.front()) <= 80);
    CHECK(full.front().ends_with(" ..."));
}

TEST_CASE("colour only when asked, and never the only sign") {
    CHECK(Style(false).bold("x") == "x");
    CHECK(Style(false).alarm("x") == "x");
    CHECK(Style(true).bold("x") == "\x1b[1mx\x1b[0m");
    CHECK(Style(true).alarm("x").find("x") != std::string::npos);
}

namespace {

Block block(std::string name, std::size_t items, int rank) {
    Block result;
    result.name = name;
    result.title = name + ":";
    for (std::size_t i = 0; i < items; ++i) result.items.push_back({name + std::to_string(i)});
    result.rank = rank;
    return result;
}

int lines_in(std::string const& text) {
    return static_cast<int>(std::count(text.begin(), text.end(), '\n'));
}

}  // namespace

TEST_CASE("a page never has more lines than asked, and names what it left out") {
    Style const plain(false);
    for (int most = 4; most <= 30; ++most) {
        std::vector<Block> blocks{block("services", 5, 0), block("measures", 4, 2),
                                  block("cautions", 6, 1)};
        fit(blocks, most);
        auto const page = page_of(blocks, plain);
        CAPTURE(most);
        CAPTURE(page);
        CHECK(lines_in(page) <= most);
        for (auto const& part : blocks) {
            bool const told = part.shown > 0 || page.find(part.name) != std::string::npos;
            CHECK(told);
        }
    }
}

TEST_CASE(
    "with room for all, everything is shown and nothing is said to be "
    "missing") {
    std::vector<Block> blocks{block("services", 2, 0), block("measures", 3, 1)};
    fit(blocks, 40);
    auto const page = page_of(blocks, Style(false));
    CHECK(page ==
          "services:\nservices0\nservices1\nmeasures:"
          "\nmeasures0\nmeasures1\nmeasures2\n");
}

TEST_CASE(
    "the lower rank gets room first; every block gets one item before "
    "any gets two") {
    std::vector<Block> blocks{block("late", 3, 5), block("early", 3, 0)};
    fit(blocks, 4);
    CHECK(blocks[1].shown >= 1);
    CHECK(blocks[1].shown >= blocks[0].shown);
    std::vector<Block> both{block("late", 3, 5), block("early", 3, 0)};
    fit(both, 6);
    CHECK(both[0].shown == 1);
    CHECK(both[1].shown == 1);
}

TEST_CASE("a block that is cut says how many items are missing") {
    std::vector<Block> blocks{block("services", 9, 0)};
    fit(blocks, 5);
    CHECK(blocks.front().shown == 3);
    CHECK(page_of(blocks, Style(false)).find("6 more") != std::string::npos);
}
