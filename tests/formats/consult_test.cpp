// SPDX-License-Identifier: MIT
// The referral note: four parts in order, what was recorded in the recorder's words, nothing more.
#include "render/consult.h"

#include "format_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

std::string note_of(std::string const& name) { return written("consult.txt", golden_case(name)); }

std::string part(std::string const& note, std::string const& from, std::string const& to) {
    auto const begin = note.find("\n" + from + "\n");
    auto const end = note.find("\n" + to + "\n");
    REQUIRE(begin != std::string::npos);
    REQUIRE(end != std::string::npos);
    REQUIRE(begin < end);
    return note.substr(begin, end - begin);
}

bool has(std::string const& text, std::string const& part) {
    return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("situation, background, assessment, recommendation, in this order") {
    for (auto const* name : {"quiet", "two-services", "everything"}) {
        auto const note = note_of(name);
        CHECK(part(note, "SITUATION", "BACKGROUND").size() > 20);
        CHECK(part(note, "BACKGROUND", "ASSESSMENT").size() > 20);
        CHECK(part(note, "ASSESSMENT", "RECOMMENDATION").size() > 20);
        for (auto const& line : lines_of(note)) CHECK(line.size() <= 80);
    }
}

TEST_CASE("findings stand in the words of the recorder, history in the background") {
    auto const note = note_of("two-services");
    auto const background = part(note, "BACKGROUND", "ASSESSMENT");
    auto const assessment = part(note, "ASSESSMENT", "RECOMMENDATION");
    CHECK(has(background, "- breech presentation"));
    CHECK(has(background, "gestation at birth: 38w4d"));
    CHECK_FALSE(has(assessment, "- breech presentation"));
    CHECK(has(assessment, "- epicanthal fold, both sides"));
    CHECK(has(assessment, "Recorded as absent:\n  - cleft palate"));
    CHECK(has(assessment, "unsure: upward slant"));
}

TEST_CASE("what nobody recorded is not in the note") {
    CHECK_FALSE(has(note_of("everything"), "any lens sign"));  // concluded from a white pupil
    CHECK_FALSE(has(note_of("quiet"), "born"));
    CHECK_FALSE(has(note_of("quiet"), "Recorded as absent"));  // absent by implication only
    CHECK(has(note_of("quiet"), "History: asked for, nothing recorded."));
}

TEST_CASE("a counting rule never stands in the situation, and is called a count") {
    auto const note = note_of("two-services");
    CHECK_FALSE(has(part(note, "SITUATION", "BACKGROUND"), "counting rule"));
    CHECK(has(part(note, "ASSESSMENT", "RECOMMENDATION"), "a count is not a diagnosis"));
}

TEST_CASE("without a suggestion the note says so") {
    auto const note = note_of("quiet");
    CHECK(has(note, "The rules suggest no referral on what was recorded."));
    CHECK(has(note, "No referral by these rules."));
}
