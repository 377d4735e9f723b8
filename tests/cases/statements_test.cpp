// SPDX-License-Identifier: MIT
/// What is said of findings: names, sides, grades, family, and what cannot both hold.
#include "reading.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

struct Row {
    std::string text;
    Texts reported;
};

}  // namespace

TEST_CASE("a finding is named by id, label, synonym or HPO id") {
    for (std::string const name : {"low-ears", "low-set ears", "Low set ears", "ears set low",
                                   "HP:0000369", "{finding: low-ears}", "'low-ears'"}) {
        CAPTURE(name);
        auto const reading = case_text("findings: [" + name + "]\n");
        CHECK(reading.all().empty());
        CHECK(ids(reading.baby.present) == Texts{"low-ears"});
        CHECK(reading.baby.present[0].sides == Sides::not_said);
        CHECK_FALSE(reading.baby.present[0].familial);
        CHECK_FALSE(reading.baby.present[0].grade);
    }
}

TEST_CASE("JSON and YAML give the same case") {
    auto const yaml = case_text(
        "findings: [{finding: low-ears, side: left, familial: true}]\nabsent: [crease]\n");
    auto const json = case_text(
        R"({"findings": [{"finding": "low-ears", "side": "left", "familial": true}], "absent": ["crease"]})",
        "c.json");
    CHECK(json.all().empty());
    CHECK(ids(yaml.baby.present) == ids(json.baby.present));
    CHECK(ids(yaml.baby.absent) == ids(json.baby.absent));
    CHECK(json.baby.present[0].sides == Sides::left);
    CHECK(json.baby.present[0].familial);
}

TEST_CASE("sides") {
    struct Side {
        std::string written;
        Sides sides;
    };
    for (Side const& row : {Side{"left", Sides::left}, Side{"right", Sides::right},
                            Side{"both", Sides::both}, Side{"bilateral", Sides::both}}) {
        CAPTURE(row.written);
        auto const reading =
            case_text("findings: [{finding: crease, side: " + row.written + "}]\n");
        CHECK(reading.all().empty());
        CHECK(reading.baby.present.at(0).sides == row.sides);
    }
    CHECK(has(Sides::both, Sides::left));
    CHECK_FALSE(has(Sides::left, Sides::both));
    CHECK_FALSE(has(Sides::not_said, Sides::right));
    CHECK((Sides::left | Sides::right) == Sides::both);
    CHECK(to_text(Sides::left) == "left");
    CHECK(to_text(Sides::both) == "both");
    CHECK(to_text(Sides::not_said) == "");
}

TEST_CASE("a grade is one of the finding's own, from least to most severe") {
    auto const first = case_text("findings: [{finding: digit, grade: skin tag}]\n");
    CHECK(first.all().empty());
    CHECK(first.baby.present.at(0).grade == 0u);
    CHECK(case_text("findings: [{finding: digit, grade: bony}]\n").baby.present.at(0).grade == 1u);
}

TEST_CASE("what is wrong in a statement is told where it stands") {
    for (Row const& row : {
             Row{"findings: [low-eers]\n", {"unknown-finding 1:12"}},
             Row{"findings: [odd ears]\n", {"ambiguous-name 1:12"}},
             Row{"findings: [{finding: ridge, side: left}]\n", {"no-sides 1:22"}},
             Row{"findings: [{finding: crease, side: lefft}]\n", {"unknown-value 1:36"}},
             Row{"findings: [{finding: digit, grade: boney}]\n", {"unknown-grade 1:36"}},
             Row{"findings: [{finding: crease, grade: bony}]\n", {"unknown-grade 1:37"}},
             Row{"findings: [{finding: crease, familial: yes}]\n", {"wrong-form 1:40"}},
             Row{"absent: [{finding: crease, familial: true}]\n", {"familial-not-present 1:38"}},
             Row{"unsure: [{finding: crease, familial: true}]\n", {"familial-not-present 1:38"}},
             Row{"absent: [{finding: crease, familial: false}]\n", {}},
             Row{"findings: [{side: left}]\n", {"missing-key 1:12"}},
             Row{"findings: [{finding: crease, sid: left}]\n", {"unknown-key 1:30"}},
             Row{"findings: [[crease]]\n", {"wrong-form 1:12"}},
             Row{"findings: ['']\n", {"wrong-form 1:12"}},
         }) {
        CAPTURE(row.text);
        CHECK(case_text(row.text).reported() == row.reported);
    }
}

TEST_CASE("an ambiguous name asks which, an unknown one offers the nearest") {
    auto const ambiguous = case_text("findings: [odd ears]\n").all();
    CHECK(ambiguous.at(0).help == "write which: `low-set ears` or `turned ears`");
    auto const slip = case_text("findings: [single palmer crease]\n").all();
    CHECK(slip.at(0).help == "did you mean `single palmar crease`");
}

TEST_CASE("everything recognised is kept when something else is wrong") {
    auto const reading = case_text(R"(sex: girl
gestation: 38.4
examined: [palmz, ears]
findings: [nonsense, low-ears, {finding: ridge, side: left}, crease]
absent: [digit, gibberish]
measures: {girth: 335 cm, weight: 2610 g}
colour: red
)");
    CHECK(reading.diagnostics.has_errors());
    CHECK(reading.all().size() == 8);
    CHECK(ids(reading.baby.present) == Texts{"low-ears", "ridge", "crease"});
    CHECK(ids(reading.baby.absent) == Texts{"digit"});
    CHECK(done(reading.baby) == Texts{"ears"});
    REQUIRE(reading.baby.measures.size() == 1);
    CHECK(reading.baby.measures[0].value == 2610);
    CHECK_FALSE(reading.baby.gestation);
    CHECK(reading.baby.sex == Sex::not_given);
}

TEST_CASE("a case that cannot be parsed holds nothing and says so") {
    for (auto const& reading :
         {case_text("findings: [\n"), case_text(""), case_text("{\"findings\": [,]}", "c.json")}) {
        CHECK(reading.diagnostics.has_errors());
        CHECK(reading.baby.present.empty());
        CHECK(reading.baby.step_done.size() == tiny().steps.size());
        CHECK(reading.baby.nothing_examined());
    }
}

TEST_CASE("what cannot both hold is a contradiction") {
    for (Row const& row : {
             Row{"findings: [crease]\nabsent: [crease]\n", {"contradiction 1:12"}},
             Row{"findings: [low-ears]\nabsent: [ears set low]\n", {"contradiction 1:12"}},
             Row{"findings: [crease]\nunsure: [crease]\n", {"contradiction 1:12"}},
             Row{"absent: [crease]\nunsure: [crease]\n", {"contradiction 1:10"}},
             Row{"absent: [{finding: crease, side: left}]\nunsure: [crease]\n", {}},
             // a present child below an absent parent or grandparent
             Row{"findings: [low-ears]\nabsent: [ear]\n", {"contradiction 1:12"}},
             Row{"findings: [turned-ears]\nabsent: [ear]\n", {"contradiction 1:12"}},
             Row{"findings: [turned-ears]\nabsent: [low-ears, ear]\n",
                 {"contradiction 1:12", "contradiction 1:12"}},
             // one side against a whole, or against both
             Row{"findings: [{finding: crease, side: left}]\nabsent: [crease]\n",
                 {"contradiction 1:22"}},
             Row{"findings: [{finding: crease, side: both}]\n"
                 "absent: [{finding: crease, side: left}]\n",
                 {"contradiction 1:22"}},
             Row{"findings: [{finding: crease, familial: true}, crease]\n", {"contradiction 1:47"}},
             Row{"findings: [{finding: digit, grade: bony}, {finding: digit, grade: skin tag}]\n",
                 {"contradiction 1:53"}},
         }) {
        CAPTURE(row.text);
        CHECK(case_text(row.text).reported() == row.reported);
    }
}

TEST_CASE("what can both hold is none") {
    for (std::string const text :
         {"findings: [ear]\nabsent: [low-ears]\n",     // the parent without this child
          "findings: [ear]\nunsure: [low-ears]\n",     //
          "findings: [low-ears]\nunsure: [ear]\n",     // present below makes the parent sure
          "findings: [crease]\nabsent: [digit]\n",     //
          "absent: [ear, low-ears]\n",                 //
          "findings: [low-ears, turned-ears, ear]\n",  //
          "findings: [crease, crease]\n",              // said twice is not said otherwise
          "findings: [{finding: crease, side: left}]\nabsent: [{finding: crease, side: right}]\n",
          "findings: [{finding: crease, side: left}, {finding: crease, side: right}]\n",
          "findings: [{finding: digit, side: left, grade: bony}, "
          "{finding: digit, side: right, grade: skin tag}]\n"}) {
        CAPTURE(text);
        CHECK(case_text(text).all().empty());
    }
}

TEST_CASE("a contradiction is shown at both places and keeps both statements") {
    auto const reading = case_text("findings:\n  - low-ears\nabsent:\n  - any ear sign\n");
    auto const all = reading.all();
    REQUIRE(all.size() == 1);
    CHECK(all[0].span.place() == "c.yaml:2:5");
    REQUIRE(all[0].related.size() == 1);
    CHECK(all[0].related[0].span.place() == "c.yaml:4:5");
    CHECK(all[0].message.find("`any ear sign`") != std::string::npos);
    CHECK(ids(reading.baby.present) == Texts{"low-ears"});
    CHECK(ids(reading.baby.absent) == Texts{"ear"});
}

TEST_CASE("unsure statements stand apart") {
    auto const reading = case_text("unsure: [low-ears, {finding: crease, side: left}]\n");
    CHECK(reading.all().empty());
    CHECK(ids(reading.baby.unsure) == Texts{"low-ears", "crease"});
    CHECK(reading.baby.unsure[1].sides == Sides::left);
    CHECK(reading.baby.present.empty());
    CHECK(reading.baby.absent.empty());
}

TEST_CASE("two present sides of one finding whose absent ancestor is on the other side") {
    auto const reading = case_text(
        "findings: [{finding: low-ears, side: left}]\nabsent: [{finding: ear, side: right}]\n");
    CHECK(reading.all().empty());
}

TEST_CASE("an ancestor absent on one side says nothing of a child whose side is left open") {
    CHECK(case_text("findings: [low-ears]\nabsent: [{finding: ear, side: right}]\n").all().empty());
    CHECK(case_text("findings: [low-ears]\nabsent: [{finding: ear, side: both}]\n").reported() ==
          Texts{"contradiction 1:12"});
}

TEST_CASE("a present child contradicts its ancestor stated absent on the same side") {
    for (std::string const side : {"left", "both"}) {
        CAPTURE(side);
        auto const reading = case_text(
            "findings: [{finding: low-ears, side: left}]\nabsent: "
            "[{finding: ear, side: " +
            side + "}]\n");
        CHECK(reading.reported() == Texts{"contradiction 1:22"});
    }
}
