// SPDX-License-Identifier: MIT
/// A finding looked up, and the worksheet.
#include "render/lookup.h"

#include <nlohmann/json.hpp>

#include "render/worksheet.h"
#include "support/small_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

CompiledRulebook const& book() {
    static CompiledRulebook const loaded =
        small_book(rule("lens", "{ present: lens }", "ophthalmology", "urgent") +
                   rule("flag", "{ any: [{ present: slant }, { present: opaque }] }",
                        "ophthalmology", "same-day"));
    return loaded;
}

}  // namespace

TEST_CASE("a finding is found by id and by label, whatever the spelling") {
    for (auto const* words : {"cloudy", "cloudy lens", "CLOUDY-LENS", "Cloudy  lens"}) {
        CAPTURE(words);
        auto const entries = look_up(book(), words);
        REQUIRE(entries.size() == 1);
        CHECK(entries.front().finding->id.text == "cloudy");
    }
    CHECK(look_up(book(), "clody").empty());
}

TEST_CASE(
    "an entry says where, how, what the book makes of it, and which "
    "rules speak of it") {
    auto const entry = look_up(book(), "opaque").front();
    CHECK(entry.region == "eyes");
    CHECK(entry.step == "reflex");
    CHECK(entry.how == "Shine.");
    CHECK(entry.parent == "cloudy lens");
    CHECK(entry.finding_class == "red-flag");
    CHECK(entry.key == "eye");
    CHECK(entry.because == "x.");
    CHECK(entry.sources == std::vector<std::string>{"s"});
    CHECK(entry.rules == std::vector<std::string>{"lens", "flag"});
    CHECK(look_up(book(), "cloudy").front().children == std::vector<std::string>{"opaque lens"});
}

TEST_CASE("a neutral parent has no class, a finding that no rule names no rules") {
    CHECK(look_up(book(), "lens").front().finding_class.empty());
    CHECK(look_up(book(), "nubbin").front().rules.empty());
    CHECK(lookup_text(look_up(book(), "lens")).find("class       none") != std::string::npos);
}

TEST_CASE("the JSON has the same, under its own schema") {
    auto const json = lookup_json("opaque", look_up(book(), "opaque"));
    CHECK(json["schema"] == "asterism.lookup/1");
    CHECK(json["words"] == "opaque");
    auto const& finding = json["findings"][0];
    for (auto const* key :
         {"finding", "label", "recognise", "region", "step", "how", "class", "key", "because",
          "synonyms", "parent", "children", "hpo", "rules", "sources"}) {
        CAPTURE(key);
        CHECK(finding.contains(key));
    }
    CHECK(finding["class"] == "red-flag");
}

TEST_CASE(
    "an empty worksheet reads back in as a case in which nothing was "
    "examined") {
    for (bool const full : {false, true}) {
        auto const one = baby(book(), worksheet_yaml(*book().ontology, full));
        CHECK(one.nothing_examined());
        CHECK(one.present.empty());
        CHECK(one.id.text == "worksheet");
    }
}

TEST_CASE(
    "a worksheet lists every step of the examination once, essential "
    "ones marked") {
    auto const sheet = worksheet_yaml(*book().ontology, true);
    for (auto const* step : {"# - look ", "# - reflex ", "# - palm "}) {
        CAPTURE(step);
        auto const first = sheet.find(step);
        REQUIRE(first != std::string::npos);
        CHECK(sheet.find(step, first + 1) == std::string::npos);
    }
    CHECK(sheet.find("ESSENTIAL") != std::string::npos);
    CHECK(sheet.find("# - told") == std::string::npos);  // history
    CHECK(sheet.find("# - echo") == std::string::npos);  // the result of a test
}

TEST_CASE("a step is ticked by taking the mark away") {
    auto sheet = worksheet_yaml(*book().ontology, false);
    auto const at = sheet.find("  # - reflex ");
    REQUIRE(at != std::string::npos);
    sheet.erase(at + 2, 2);
    auto const one = baby(book(), sheet);
    CHECK(one.step_done[*book().ontology->step("reflex")]);
    CHECK_FALSE(one.step_done[*book().ontology->step("look")]);
}

TEST_CASE("a worksheet with everything ticked is a whole examination") {
    auto sheet = worksheet_yaml(*book().ontology, false);
    for (auto at = sheet.find("  # - "); at != std::string::npos; at = sheet.find("  # - ", at))
        sheet.erase(at + 2, 2);
    auto const one = baby(book(), sheet);
    for (StepId id = 0; id < book().ontology->steps.size(); ++id) {
        auto const& step = book().ontology->steps[id];
        bool const history = book().ontology->regions[step.region].history;
        CAPTURE(step.id.text);
        CHECK(one.step_done[id] == (!history && !step.result));
    }
}

TEST_CASE("the sheet to print is one page of HTML with the same steps") {
    auto const html = worksheet_html(*book().ontology);
    CHECK(html.find("<!DOCTYPE html>") == 0);
    for (auto const* label : {"look", "reflex", "palm"}) {
        CAPTURE(label);
        CHECK(html.find(label) != std::string::npos);
    }
    CHECK(html.find("<script") == std::string::npos);
}
