// SPDX-License-Identifier: MIT
/// Facts of a case: identity, dates, what was examined, history and measures.
#include "reading.h"

using namespace asterism;
using namespace asterism::testing;

TEST_CASE("a whole case in YAML") {
    auto const reading = case_text(R"(case: A-17
sex: female
gestation: 38w4d
age: 26h
born: 2031-04-02
examined-on: 2031-04-03
examined: all
findings: [low-ears]
history: none
measures: {girth: 33.5 cm}
decisions: {referred: [genetics], on: 2031-04-03}
)");
    CHECK(reading.all().empty());
    auto const& baby = reading.baby;
    CHECK(baby.id.text == "A-17");
    CHECK(baby.sex == Sex::female);
    CHECK(baby.gestation == Gestation{270, 270});
    CHECK(baby.age == Duration{26});
    CHECK(to_text(*baby.born) == "2031-04-02");
    CHECK(to_text(*baby.examined_on) == "2031-04-03");
    CHECK(baby.history_none);
    REQUIRE(baby.decisions);
    CHECK(baby.decisions->referred.at(0).text == "genetics");
    CHECK(to_text(*baby.decisions->on) == "2031-04-03");
}

TEST_CASE("an empty case assumes nothing") {
    for (auto const& reading : {case_text("{}"), case_of({})}) {
        CHECK(reading.all().empty());
        CHECK(reading.baby.nothing_examined());
        CHECK(reading.baby.step_done.size() == tiny().steps.size());
        CHECK(reading.baby.sex == Sex::not_given);
        CHECK_FALSE(reading.baby.gestation);
        CHECK_FALSE(reading.baby.age);
        CHECK_FALSE(reading.baby.history_none);
        CHECK_FALSE(reading.baby.decisions);
        CHECK(reading.baby.present.empty());
        CHECK(reading.baby.measures.empty());
    }
}

TEST_CASE("what was examined") {
    struct Row {
        std::string examined;
        Texts steps;
    };
    for (Row const& row : {
             Row{"all", {"tape", "ears", "palms"}},  // neither results nor history
             Row{"none", {}},
             Row{"[]", {}},
             Row{"", {}},
             Row{"ears", {"ears"}},
             Row{"outer ears", {"ears"}},
             Row{"Outer-Ears", {"ears"}},
             Row{"head", {"tape", "ears"}},
             Row{"hands", {"palms", "scan"}},
             Row{"[palms, ears]", {"ears", "palms"}},
             Row{"[all, scan]", {"tape", "ears", "palms", "scan"}},
             Row{"[all, {except: ears}]", {"tape", "palms"}},
             Row{"[all, {except: [ears, tape]}]", {"palms"}},
             Row{"[{except: ears}, all]", {"tape", "palms"}},
             Row{"[all, {except: head}]", {"palms"}},
             Row{"[all, scan, {except: all}]", {}},
             Row{"[all, {except: hands}, {except: tape}]", {"ears"}},
             Row{"asking", {"asking"}},
         }) {
        CAPTURE(row.examined);
        auto const reading = case_text("examined: " + row.examined + "\n");
        CHECK(reading.all().empty());
        CHECK(done(reading.baby) == row.steps);
        CHECK(reading.baby.nothing_examined() == row.steps.empty());
    }
}

TEST_CASE("an unknown step is told with the nearest, and the known ones count") {
    auto const reading = case_text("examined: [palm, ears]\n");
    CHECK(reading.reported() == Texts{"unknown-step 1:12"});
    CHECK(reading.all()[0].help.find("`palms`") != std::string::npos);
    CHECK(done(reading.baby) == Texts{"ears"});
    CHECK(case_text("examined: [all, {except: palmz}]\n").reported() == Texts{"unknown-step 1:26"});
    CHECK(case_text("examined: [all, {without: ears}]\n").reported() == Texts{"wrong-form 1:17"});
}

TEST_CASE("facts that are not understood are told at their place") {
    struct Row {
        std::string text;
        std::string reported;
    };
    for (Row const& row : {
             Row{"gestation: 38.4\n", "bad-gestation 1:12"},
             Row{"gestation: 38w7d\n", "bad-gestation 1:12"},
             Row{"gestation: 46w0d\n", "bad-gestation 1:12"},
             Row{"age: 3\n", "bad-age 1:6"},
             Row{"age: 1.5d\n", "bad-age 1:6"},
             Row{"age: 38w4d\n", "age-like-gestation 1:6"},
             Row{"age: 22w\n", "age-like-gestation 1:6"},
             Row{"born: 2031-02-29\n", "bad-date 1:7"},
             Row{"examined-on: today\n", "bad-date 1:14"},
             Row{"decisions: {on: 31-1-1}\n", "bad-date 1:17"},
             Row{"sex: girl\n", "unknown-value 1:6"},
             Row{"sex: [male]\n", "wrong-form 1:6"},
             Row{"case: {}\n", "wrong-form 1:7"},
             Row{"gestatoin: 38w\n", "unknown-key 1:1"},
             Row{"findings: low-ears\n", "wrong-form 1:11"},
             Row{"measures: [1]\n", "wrong-form 1:11"},
             Row{"- a\n", "wrong-form 1:1"},
         }) {
        CAPTURE(row.text);
        CHECK(case_text(row.text).reported() == Texts{row.reported});
    }
}

TEST_CASE("an age in weeks that is no gestation raises no eyebrow") {
    CHECK(case_text("age: 6w\n").reported().empty());
    CHECK(case_text("age: 21w6d\n").reported().empty());
    CHECK(case_text("age: 200d\n").reported().empty());
}

TEST_CASE("an unknown key names the nearest") {
    auto const all = case_text("finding: [low-ears]\n").all();
    REQUIRE(all.size() == 1);
    CHECK(all[0].help.find("`findings`") != std::string::npos);
}

TEST_CASE("an examination before the birth is told at both dates") {
    auto const all = case_text("born: 2031-04-02\nexamined-on: 2031-04-01\n").all();
    REQUIRE(all.size() == 1);
    CHECK(all[0].code == "dates-reversed");
    CHECK(all[0].span.place() == "c.yaml:2:14");
    REQUIRE(all[0].related.size() == 1);
    CHECK(all[0].related[0].span.place() == "c.yaml:1:7");
    CHECK(case_text("born: 2031-04-02\nexamined-on: 2031-04-02\n").all().empty());
}

TEST_CASE("measures are converted to their own unit") {
    struct Row {
        std::string written;
        double value;
        double step;
    };
    for (Row const& row : {
             Row{"girth: 33.5 cm", 335, 1},
             Row{"girth: 335 mm", 335, 1},
             Row{"girth: 335.0 mm", 335, 0.1},
             Row{"HC: 33 cm", 330, 10},
             Row{"Head-girth: 13.5 in", 342.9, 2.54},
             Row{"girth: 20 cm", 200, 10},  // both ends of the range are plausible
             Row{"girth: 45.0 cm", 450, 1},
             Row{"weight: 2.61 kg", 2610, 10},
             Row{"weight: 2610 g", 2610, 1},
             Row{"weight: 6 lb 4 oz", 2834.9523125, 28.349523125},
             Row{"rate: 148/min", 148, 1},
             Row{"rate: 148 bpm", 148, 1},
         }) {
        CAPTURE(row.written);
        auto const reading = case_text("measures: {" + row.written + "}\n");
        CHECK(reading.all().empty());
        REQUIRE(reading.baby.measures.size() == 1);
        CHECK(reading.baby.measures[0].value == doctest::Approx(row.value).epsilon(1e-11));
        CHECK(reading.baby.measures[0].step == doctest::Approx(row.step).epsilon(1e-11));
    }
}

TEST_CASE("conversion leaves no noise that a strict cut-off would see") {
    for (auto const& [written, value] :
         {std::pair{"33.6 cm", 336.0}, std::pair{"34.1 cm", 341.0}, std::pair{"32.3 cm", 323.0}}) {
        auto const reading = case_text("measures: {girth: " + std::string(written) + "}\n");
        REQUIRE(reading.baby.measures.size() == 1);
        CHECK(reading.baby.measures[0].value == value);
    }
}

TEST_CASE("measures that cannot be used are told why") {
    struct Row {
        std::string written;
        std::string code;
        std::string part;
    };
    for (Row const& row : {
             Row{"girth: 335 cm", "implausible", "did you mean `335 mm`"},
             Row{"girth: 33.5 mm", "implausible", "did you mean `33.5 cm`"},
             Row{"girth: 900 mm", "implausible", "200 to 450 mm"},
             Row{"girth: 199 mm", "implausible", "200 to 450 mm"},
             Row{"weight: 3 g", "implausible", "did you mean `3 kg`"},
             Row{"girth: 335", "bad-unit", "has no unit accepted: mm, cm, in"},
             Row{"girth: 335 kg", "bad-unit", "unknown unit `kg`"},
             Row{"rate: 148 %", "bad-unit", "accepted: /min"},
             Row{"girth: large", "bad-number", "`31.0 cm`"},
             Row{"girth: 33,5 cm", "bad-number", ""},
             Row{"girt: 335 mm", "unknown-measure", "did you mean `girth`"},
             Row{"girth: [335 mm]", "wrong-form", ""},
             Row{"girth: .nan", "bad-number", ""},
         }) {
        // In block form, because a comma would end a value in braces.
        CAPTURE(row.written);
        auto const reading = case_text("measures:\n  " + row.written + "\n  rate: 120 bpm\n");
        auto const all = reading.all();
        auto const found = std::find_if(all.begin(), all.end(),
                                        [&](Diagnostic const& d) { return d.code == row.code; });
        REQUIRE(found != all.end());
        CHECK((found->message + " " + found->help).find(row.part) != std::string::npos);
        CHECK(found->span.position().line == 2);
        auto const is_rate = row.written.substr(0, 4) == "rate";
        CHECK(reading.baby.measures.size() == (is_rate ? 0 : 1));
    }
}

TEST_CASE("one measure under two names is told at both") {
    auto const reading = case_text("measures:\n  girth: 33 cm\n  HC: 34 cm\n");
    auto const all = reading.all();
    REQUIRE(all.size() == 1);
    CHECK(all[0].code == "measured-twice");
    CHECK(all[0].span.place() == "c.yaml:3:3");
    REQUIRE(all[0].related.size() == 1);
    CHECK(all[0].related[0].span.place() == "c.yaml:2:3");
    CHECK(reading.baby.measures.size() == 1);
}

TEST_CASE("history items are told, not seen") {
    auto const reading = case_text("history: [breech, uncle with the same]\n");
    CHECK(reading.all().empty());
    CHECK(ids(reading.baby.present) == Texts{"breech", "uncle"});
    CHECK_FALSE(reading.baby.history_none);
    CHECK(ids(case_text("history: breech birth\n").baby.present) == Texts{"breech"});
    auto const seen = case_text("history: [low-ears]\n");
    CHECK(seen.reported() == Texts{"not-history 1:11"});
    CHECK(seen.all()[0].help.find("`findings`") != std::string::npos);
}

TEST_CASE("history none and a history item contradict") {
    auto const reading = case_text("history: none\nfindings: [breech]\n");
    CHECK(reading.baby.history_none);
    CHECK(reading.reported() == Texts{"contradiction 2:12"});
    CHECK(case_text("history: none\nabsent: [breech]\n").all().empty());
}
