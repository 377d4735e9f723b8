// SPDX-License-Identifier: MIT
/// A case typed as flags: the same reader, with places that count arguments.
#include "reading.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

Texts places(CaseReading const& reading) {
    Texts result;
    for (auto const& diagnostic : reading.all())
        result.push_back(diagnostic.code + " " + diagnostic.span.place());
    return result;
}

CaseArguments with_findings(Texts findings) {
    CaseArguments arguments;
    arguments.findings = std::move(findings);
    return arguments;
}

}  // namespace

TEST_CASE("every kind of argument reaches the case") {
    CaseArguments arguments;
    arguments.findings = {"low-set ears; right; familial", "extra digit; bony; left"};
    arguments.absent = {"single palmar crease"};
    arguments.unsure = {"ridge"};
    arguments.measures = {"head girth=33.5 cm", "rate = 148 /min"};
    arguments.history = {"breech"};
    arguments.examined = {"all", "except=tape"};
    arguments.id = "A-1";
    arguments.sex = "male";
    arguments.gestation = "38+4";
    arguments.age = "26h";
    arguments.born = "2031-04-02";
    arguments.examined_on = "2031-04-03";
    auto const reading = case_of(arguments);
    CHECK(places(reading) == Texts{});
    auto const& baby = reading.baby;
    CHECK(ids(baby.present) == Texts{"low-ears", "digit", "breech"});
    CHECK(baby.present[0].sides == Sides::right);
    CHECK(baby.present[0].familial);
    CHECK(baby.present[1].sides == Sides::left);
    CHECK(baby.present[1].grade == 1u);
    CHECK(ids(baby.absent) == Texts{"crease"});
    CHECK(ids(baby.unsure) == Texts{"ridge"});
    CHECK(baby.measures.size() == 2);
    CHECK(done(baby) == Texts{"ears", "palms"});
    CHECK(baby.id.text == "A-1");
    CHECK(baby.sex == Sex::male);
    CHECK(baby.gestation == Gestation{270, 270});
    CHECK(baby.age == Duration{26});
    CHECK(to_text(*baby.born) == "2031-04-02");
    CHECK(to_text(*baby.examined_on) == "2031-04-03");
}

TEST_CASE("no arguments are empty, any argument is not") {
    CHECK(CaseArguments{}.empty());
    CHECK_FALSE(with_findings({"ridge"}).empty());
    CaseArguments only_age;
    only_age.age = "1d";
    CHECK_FALSE(only_age.empty());
    CaseArguments only_examined;
    only_examined.examined = {"all"};
    CHECK_FALSE(only_examined.empty());
}

TEST_CASE("an error names the argument by its number and the column within") {
    CHECK(places(case_of(with_findings({"low-eers"}))) == Texts{"unknown-finding <arguments>:1:1"});
    CHECK(places(case_of(with_findings({"ridge", "crease;  lefft"}))) ==
          Texts{"unknown-grade <arguments>:2:10"});
    CHECK(places(case_of(with_findings({"\u00e9\u00e9\u00e9\u00e9;left"}))) ==
          Texts{"unknown-finding <arguments>:1:1"});
    CaseArguments arguments = with_findings({"ridge"});
    arguments.absent = {"crease"};
    arguments.measures = {"girth=335 cm"};
    arguments.examined = {"all, palmz"};
    arguments.gestation = "38.4";
    CHECK(places(case_of(arguments)) == Texts{"implausible <arguments>:3:7",
                                              "unknown-step <arguments>:4:6",
                                              "bad-gestation <arguments>:7:1"});
}

TEST_CASE("the qualifiers of a finding may stand in any order, with blanks or without") {
    for (std::string const text : {"digit;left;bony;familial", "digit; familial; bony; left",
                                   "  digit ;bony;  left;familial ", "digit;left;bony;familial;"}) {
        CAPTURE(text);
        auto const reading = case_of(with_findings({text}));
        CHECK(reading.all().empty());
        REQUIRE(reading.baby.present.size() == 1);
        CHECK(reading.baby.present[0].sides == Sides::left);
        CHECK(reading.baby.present[0].grade == 1u);
        CHECK(reading.baby.present[0].familial);
    }
}

TEST_CASE("two sides or two grades in one argument are told, not dropped") {
    for (std::string const text : {"crease; left; right", "digit; bony; skin tag"}) {
        CAPTURE(text);
        CHECK(case_of(with_findings({text})).diagnostics.has_errors());
    }
}

TEST_CASE("the second of two sides is where the problem is told; saying one twice is none") {
    CHECK(places(case_of(with_findings({"ridge", "crease; left; right"}))) ==
          Texts{"wrong-form <arguments>:2:15"});
    CHECK(case_of(with_findings({"crease; left; familial; left; familial"})).all().empty());
}

TEST_CASE("a measure needs an equals sign, a name and a value") {
    for (std::string const text : {"girth", "girth=", "=33 cm", "girth 33 cm"}) {
        CAPTURE(text);
        CaseArguments arguments;
        arguments.measures = {text, "rate=148 bpm"};
        auto const reading = case_of(arguments);
        CHECK(reading.diagnostics.has_errors());
        CHECK(reading.baby.measures.size() == 1);
    }
}

TEST_CASE("one measure twice in arguments is told at both, also under one name") {
    for (std::string const second : {"HC=34 cm", "girth=34 cm"}) {
        CAPTURE(second);
        CaseArguments arguments;
        arguments.measures = {"girth=33 cm", second};
        auto const all = case_of(arguments).all();
        REQUIRE(all.size() == 1);
        CHECK(all[0].code == "measured-twice");
        CHECK(all[0].span.place() == "<arguments>:2:1");
        CHECK(all[0].related.at(0).span.place() == "<arguments>:1:1");
    }
}

TEST_CASE("history none") {
    CaseArguments arguments;
    arguments.history = {"none"};
    CHECK(case_of(arguments).baby.history_none);
    CHECK(case_of(arguments).all().empty());
    arguments.history = {"none", "breech"};
    CHECK(case_of(arguments).diagnostics.has_errors());
}

TEST_CASE("what was examined, in one argument or in several") {
    struct Row {
        Texts written;
        Texts steps;
    };
    for (Row const& row : {
             Row{{"all"}, {"tape", "ears", "palms"}},
             Row{{"ears, palms"}, {"ears", "palms"}},
             Row{{"ears", "palms"}, {"ears", "palms"}},
             Row{{"all, except=ears"}, {"tape", "palms"}},
             Row{{"all", "except = ears"}, {"tape", "palms"}},
             Row{{"except=head", "all"}, {"palms"}},
             Row{{"none"}, {}},
         }) {
        auto const text = row.written.front();
        CAPTURE(text);
        CaseArguments arguments;
        arguments.examined = row.written;
        auto const reading = case_of(arguments);
        CHECK(reading.all().empty());
        CHECK(done(reading.baby) == row.steps);
    }
}

TEST_CASE("a line break in an argument does not shift the places of the others") {
    auto const reading = case_of(with_findings({"low-set\nears", "nonsense"}));
    CHECK(ids(reading.baby.present) == Texts{"low-ears"});
    CHECK(places(reading) == Texts{"unknown-finding <arguments>:2:1"});
}

TEST_CASE("an empty argument is told") {
    for (std::string const text : {"", " ", ";left"}) {
        CAPTURE(text);
        auto const reading = case_of(with_findings({text, "ridge"}));
        CHECK(reading.diagnostics.has_errors());
        CHECK(ids(reading.baby.present) == Texts{"ridge"});
    }
}

TEST_CASE("arguments contradict each other like lines of a file") {
    auto arguments = with_findings({"low-ears"});
    arguments.absent = {"ear"};
    auto const all = case_of(arguments).all();
    REQUIRE(all.size() == 1);
    CHECK(all[0].span.place() == "<arguments>:1:1");
    CHECK(all[0].related.at(0).span.place() == "<arguments>:2:1");
}
