// SPDX-License-Identifier: MIT
// Which babies are judged differently, and by which rule; how it is printed.
#include "review/compare.h"

#include <map>
#include <string>

#include <nlohmann/json.hpp>

#include "render/comparison.h"
#include "support/small_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

constexpr auto slant = "{ present: slant }";

CaseSet cases(CompiledRulebook const& book, std::vector<std::string> const& texts) {
    CaseSet set{CaseSet::Origin::files, "cases", {}};
    for (auto const& text : texts) set.babies.push_back({baby(book, text), {}});
    return set;
}

std::string const baby_with_slant = "case: one\nexamined: all\nhistory: none\nfindings: [slant]\n";

/// How genetics changed for a baby with slanting eyes.
ServiceChange change(std::string const& before, std::string const& after,
                     std::string const& text = baby_with_slant) {
    auto const old_book = small_book(before), new_book = small_book(after);
    auto const result = compare(old_book, new_book, {cases(new_book, {text})});
    REQUIRE(result.sets.size() == 1);
    REQUIRE(result.sets[0].changed.size() == 1);
    REQUIRE(result.sets[0].changed[0].changes.size() == 1);
    return result.sets[0].changed[0].changes[0];
}

std::string const other = rule("other", "{ present: digit }", "genetics", "urgent");

BookComparison hostile() {
    auto const evil = "<b>&\"'`|*\x1b[31m\xe2\x80\xae";
    BookComparison c;
    c.before = {evil, evil, evil, evil};
    c.after = c.before;
    c.differences.push_back({"rule", evil, evil, evil, evil, evil, evil});
    ServiceChange changed{
        evil, ChangeKind::gained, {}, {Verdict::suggested, Urgency::urgent, {evil}}};
    c.sets.push_back({CaseSet::Origin::files,
                      evil,
                      1,
                      {{evil, evil, evil, {changed}}},
                      {{evil, ChangeKind::gained, {evil}, 1}}});
    return c;
}

}  // namespace

TEST_CASE("every kind of change has its name and its rule") {
    auto const urgent = rule("a", slant, "genetics", "urgent");
    auto const gained = change(other, other + urgent);
    CHECK(gained.kind == ChangeKind::gained);
    CHECK(gained.by() == std::vector<std::string>{"a"});
    auto const lost = change(other + urgent, other);
    CHECK(lost.kind == ChangeKind::lost);
    CHECK(lost.by() == std::vector<std::string>{"a"});
    CHECK(change(urgent, rule("a", slant, "genetics", "emergency")).kind == ChangeKind::sooner);
    CHECK(change(urgent, rule("a", slant, "genetics", "routine")).kind == ChangeKind::later);
    auto const reasons = change(urgent, urgent + rule("b", slant, "genetics", "routine"));
    CHECK(reasons.kind == ChangeKind::reasons);
    CHECK(reasons.by() == std::vector<std::string>{"b"});
}

TEST_CASE("an answer that opens or settles is told") {
    std::string const not_seen = "case: one\nexamined: [look]\nhistory: none\nfindings: []\n";
    auto const opened = change(rule("a", slant, "genetics", "urgent"), other, not_seen);
    CHECK(opened.kind == ChangeKind::opened);
    CHECK(opened.by() == std::vector<std::string>{"other"});
    CHECK(change(other, rule("a", slant, "genetics", "urgent"), not_seen).kind ==
          ChangeKind::settled);
}

TEST_CASE("babies who are judged the same are counted and not listed") {
    auto const before = small_book(other),
               after = small_book(other + rule("a", slant, "genetics", "urgent"));
    auto const result =
        compare(before, after,
                {cases(after, {baby_with_slant, "case: two\nexamined: all\nfindings: [crease]\n",
                               "case: three\nfindings: [slant]\n"})});
    CHECK(result.sets[0].babies == 3);
    REQUIRE(result.sets[0].changed.size() == 2);
    CHECK(result.sets[0].changed[0].baby == "one");
    CHECK(result.sets[0].changed[1].baby == "three");
    CHECK(result.sets[0].changed[0].findings == "slanting eyes");
    REQUIRE(result.sets[0].counts.size() == 1);
    CHECK(result.sets[0].counts[0].babies == 2);
    CHECK(result.any_change());
    CHECK_FALSE(compare(before, before, {cases(before, {baby_with_slant})}).any_change());
}

TEST_CASE("a service that only one book has counts as not suggested by the other") {
    auto text = small_book_head + "rules:\n" + rule("a", slant, "dermatology", "urgent");
    auto const at = text.find("  - { service: orthopaedics");
    text.insert(at, "  - { service: dermatology, label: skin }\n");
    auto loaded = load(text);
    REQUIRE(loaded.book);
    auto const before = small_book(other);
    auto const forward = compare(before, *loaded.book, {cases(before, {baby_with_slant})});
    REQUIRE(forward.sets[0].changed.size() == 1);
    CHECK(forward.sets[0].changed[0].changes[0].service == "dermatology");
    CHECK(forward.sets[0].changed[0].changes[0].kind == ChangeKind::gained);
    auto const back = compare(*loaded.book, before, {cases(before, {baby_with_slant})});
    CHECK(back.sets[0].changed[0].changes[0].kind == ChangeKind::lost);
}

TEST_CASE("the vignettes of both books are judged, each once") {
    auto const vignette = [](std::string const& id) {
        return "  - { vignette: " + id +
               ", story: A baby., case: { findings: [slant] }, expect: { referrals: { genetics: "
               "suggested } }, sources: [s] }\n";
    };
    auto const with = [&](std::string const& vignettes) {
        auto loaded = load(small_book_head + "rules:\n" + other + "vignettes:\n" + vignettes);
        REQUIRE(loaded.book);
        return std::move(*loaded.book);
    };
    Diagnostics diagnostics;
    auto const set = vignettes_of(with(vignette("u") + vignette("v")),
                                  with(vignette("v") + vignette("w")), diagnostics);
    CHECK(diagnostics.empty());
    REQUIRE(set.babies.size() == 3);
    CHECK(set.babies[0].baby.id.text == "v");
    CHECK(set.babies[1].baby.id.text == "w");
    CHECK(set.babies[2].baby.id.text == "u");
    CHECK(set.babies[2].story == "A baby.");
}

TEST_CASE("text: the books, the words, the babies, the caution") {
    auto const before = small_book(other),
               after = small_book(other + rule("a", slant, "genetics", "urgent"));
    auto const text =
        comparison_text(compare(before, after, {cases(after, {baby_with_slant})}), false);
    for (auto const* part :
         {"earlier: small 1.0.0, in force from 2026-01-01", "What is written differently",
          "    a\n", "new: genetics, urgent when slanting eyes", "1 case: 1 is judged differently",
          "1: genetics newly suggested, by a", "* one: slanting eyes",
          "genetics newly suggested (urgent, by a; was not suggested)",
          "Nothing here is a diagnosis"}) {
        CAPTURE(part);
        CHECK(text.find(part) != std::string::npos);
    }
    auto const same = comparison_text(compare(before, before, {}), false);
    CHECK(same.find("  nothing\n") != std::string::npos);
}

TEST_CASE("hostile words are inert in every format") {
    auto const text = comparison_text(hostile(), false), html = comparison_html(hostile());
    CHECK(text.find('\x1b') == std::string::npos);
    CHECK(text.find("\xe2\x80\xae") == std::string::npos);
    CHECK(html.find("<b>") == std::string::npos);
    CHECK(html.find('\x1b') == std::string::npos);
    CHECK(html.find("<script") == std::string::npos);
    auto const json = comparison_json(hostile());
    CHECK(json["differences"][0]["id"] == hostile().differences[0].id);
}

TEST_CASE("the JSON has the keys of the contract") {
    auto const before = small_book(other),
               after = small_book(other + rule("a", slant, "genetics", "urgent"));
    auto const json = comparison_json(compare(before, after, {cases(after, {baby_with_slant})}));
    CHECK(json["schema"] == "asterism.comparison/1");
    CHECK(json["any_change"] == true);
    CHECK(json["differences"][0]["aspect"].is_null());
    CHECK(json["judged"][0]["cases"] == "files");
    CHECK(json["judged"][0]["counts"][0]["by"][0] == "a");
    auto const& change = json["judged"][0]["changed"][0]["changes"][0];
    CHECK(change["change"] == "gained");
    CHECK(change["after"]["urgency"] == "urgent");
    CHECK(change["before"]["urgency"].is_null());
}
