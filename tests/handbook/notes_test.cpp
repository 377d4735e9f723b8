// SPDX-License-Identifier: MIT
// The changelog: versions, days, items, and every way in which it can be wrong.
#include "rulebook/release_notes.h"

#include "support/small_book.h"
#include "testing.h"

using namespace asterism;

namespace {

struct Read {
    std::vector<ReleaseNotes> notes;
    Diagnostics diagnostics;
};

Read read(std::string text) {
    Read result;
    result.notes =
        read_release_notes(make_source("CHANGELOG.md", std::move(text)), result.diagnostics);
    return result;
}

}  // namespace

TEST_CASE("versions, days, items and paragraphs are read") {
    auto const result = read(
        "# Changes\nNot of a version.\n\n## 0.2.0 (in force from 2031-01-01)\n- One\n  goes on.\n- "
        "Two.\n\n"
        "A paragraph\nof two lines.\n\n## 0.1.0\n* First.\r\n");
    CHECK(result.diagnostics.empty());
    REQUIRE(result.notes.size() == 2);
    CHECK(result.notes[0].version.text == "0.2.0");
    CHECK(result.notes[0].day == "2031-01-01");
    CHECK(result.notes[0].changes ==
          std::vector<std::string>{"One goes on.", "Two.", "A paragraph of two lines."});
    CHECK(result.notes[1].day.empty());
    CHECK(result.notes[1].changes == std::vector<std::string>{"First."});
}

TEST_CASE("what is wrong is told at its place") {
    auto const codes = [](std::string text) {
        return testing::codes(read(std::move(text)).diagnostics);
    };
    CHECK(codes("## next\n- x\n") == std::vector<std::string>{"bad-version"});
    CHECK(codes("## 1.0.0\n\n## 0.9.0\n- x\n") == std::vector<std::string>{"empty-notes"});
    CHECK(codes("## 1.0.0\n- x\n## 1.0.0\n- y\n") == std::vector<std::string>{"second-notes"});
    CHECK(codes("").empty());
    CHECK(read("x\n## y\n- z").diagnostics.sorted()[0].span.place() == "CHANGELOG.md:2:4");
}

TEST_CASE("an earlier book has the notes up to itself") {
    auto const notes = read("## 0.10.0\n- c\n## 0.9.0\n- b\n## 0.1.0\n- a\n").notes;
    CHECK(up_to(notes, "0.9.0").size() == 2);
    CHECK(up_to(notes, "0.10.0").size() == 3);
    CHECK(up_to(notes, "draft").size() == 3);
}
