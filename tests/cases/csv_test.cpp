// SPDX-License-Identifier: MIT
#include "cases/case_readers.h"
#include "cases/csv_cases.h"
#include "records.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

Records csv(std::string const& text) { return read_records(read_csv_cases, text, false, "w.csv"); }

}  // namespace

TEST_CASE("one row is a baby") {
    auto const read =
        csv("case,sex,gestation,age,examined,findings,absent,measures,history,referred,decided-on\n"
            "\"a,1\",female,38w4d,26h,all|except=tape,low-set ears; right|seizures; marked,"
            "cleft palate,weight=2610 g,none,genetics|ent,2031-04-03\n"
            "b,,,,,,,,consanguinity,none,\n");
    CHECK(read.errors() == "");
    REQUIRE(read.cases.size() == 2);
    auto const& a = read.cases[0].baby;
    CHECK(a.id.text == "a,1");
    CHECK(listed(a.present) == "low-set-ears right, seizures marked");
    CHECK(listed(a.absent) == "cleft-palate");
    CHECK(a.measures.front().value == 2610);
    CHECK(a.history_none);
    CHECK(a.step_done == std::vector<bool>{true, false, false});
    CHECK(a.decisions->referred.size() == 2);
    CHECK(to_text(a.decisions->on.value()) == "2031-04-03");
    CHECK(listed(read.cases[1].baby.present) == "consanguinity");
    CHECK(read.cases[1].baby.decisions->referred.empty());
}

TEST_CASE("one row is a finding") {
    auto const read =
        csv("case,finding,state,side,familial\n"
            "a,low-set ears,present,left,true\na,cleft "
            "palate,absent,,\nb,seizures,,,\nb,dimple,unsure,,\n");
    CHECK(read.errors() == "");
    REQUIRE(read.cases.size() == 2);
    CHECK(listed(read.cases[0].baby.present) == "low-set-ears left");
    CHECK(read.cases[0].baby.present.front().familial);
    CHECK(listed(read.cases[0].baby.absent) == "cleft-palate");
    CHECK(listed(read.cases[1].baby.present) == "seizures");
    CHECK(listed(read.cases[1].baby.unsure) == "dimple");
}

TEST_CASE("rows of a finding say of the baby what one row of a baby says") {
    std::string const wide =
        "case,sex,gestation,age,born,examined-on,examined,findings,absent,measures,history,"
        "referred,decided-on\n"
        "a,female,38w4d,26h,2031-04-02,2031-04-03,all|except=tape,low-set ears; right|seizures; "
        "marked,cleft palate,weight=2610 g,none,genetics|ent,2031-04-03\n";
    std::string const head =
        "case,sex,gestation,age,born,examined-on,examined,finding,state,side,grade,measures,"
        "history,referred,decided-on\n";
    std::string const baby = "female,38w4d,26h,2031-04-02,2031-04-03,all|except=tape,";
    std::string const rest = ",weight=2610 g,none,genetics|ent,2031-04-03\n";
    std::string const first = "low-set ears,,right,", second = "seizures,present,,marked",
                      third = "cleft palate,absent,,";
    auto const expected = csv(wide).cases;
    for (auto const& text : {
             head + "a," + baby + first + rest + "a,,,,,,," + second + ",,,,\na,,,,,,," + third +
                 ",,,,\n",
             head + "a," + baby + first + rest + "a," + baby + second + rest + "a," + baby + third +
                 rest,
             head + "a,,,,,,," + first + ",,,,\na,,38w4d,,,,," + second + ",,,,\na,,,,,,," + third +
                 ",,,,\na," + baby + ",,," + rest,
         }) {
        auto const read = csv(text);
        CHECK(read.errors() == "");
        REQUIRE(read.cases.size() == 1);
        auto const &one = read.cases.front().baby, &other = expected.front().baby;
        CHECK(listed(one.present) == listed(other.present));
        CHECK(listed(one.present) == "low-set-ears right, seizures marked");
        CHECK(listed(one.absent) == listed(other.absent));
        CHECK(one.sex == other.sex);
        CHECK(to_text(*one.gestation) == to_text(*other.gestation));
        CHECK(one.age->hours == other.age->hours);
        CHECK(to_text(*one.born) == "2031-04-02");
        CHECK(to_text(*one.examined_on) == "2031-04-03");
        CHECK(one.step_done == other.step_done);
        CHECK(one.measures.front().value == 2610);
        CHECK(one.history_none);
        CHECK(one.decisions->referred.size() == 2);
        CHECK(to_text(one.decisions->on.value()) == "2031-04-03");
    }
}

TEST_CASE("rows of a case that contradict each other, or speak of no finding") {
    std::string const head = "case,sex,examined-on,finding,state,side\n";
    CHECK(csv(head + "a,female,2031-04-03,,,\n").errors() == "");
    CHECK(csv(head + "a,female,,seizures,,\na, female ,,dimple,,\n").errors() == "");
    CHECK(csv(head + "a,female,2031-04-03,seizures,,\na,male,2031-04-04,dimple,,\n").errors() ==
          "3:3 rows-disagree 3:8 rows-disagree");
    CHECK(csv(head + "a,female,,seizures,,\nb,male,,dimple,,\n").errors() == "");
    CHECK(csv(head + "a,,2031-02-30,seizures,,\n").errors() == "2:4 bad-date");
    CHECK(csv(head + "a,female,,,absent,\na,,,,,left\n").errors() ==
          "2:12 missing-finding 3:7 missing-finding");
    CHECK(csv(head + "a,female,,seizures,,\n,male,,dimple,,\n").errors() == "3:1 missing-case");
    CHECK(csv("case,finding,absent\na,seizures,dimple\n").errors() == "1:14 unknown-column");
    CHECK(csv("finding,gestatoin,sxe\nseizures,,\n").errors() ==
          "1:9 unknown-column 1:19 unknown-column");
}

TEST_CASE("a header with columns beside those of a case") {
    auto const read = [](std::vector<std::string> const& names, CsvBeside const& beside) {
        std::vector<Word> header;
        for (auto const& name : names) header.push_back({name, {}});
        Diagnostics diagnostics;
        auto const form = read_csv_header(header, beside, diagnostics);
        std::string text = form ? form->is_long ? "long" : "wide" : "none";
        for (auto const& problem : diagnostics.sorted())
            text += ", " + problem.code + " " + problem.help;
        if (form) CHECK(form->columns.size() == names.size());
        return text;
    };
    CsvBeside const beside{{"unit", "state"}, {"note", "sex", "case"}, "name it"};
    CHECK(read({"case", "findings", "unit", "note"}, beside) == "wide");
    CHECK(read({"case", "findings", "state"}, beside) == "wide");
    CHECK(read({"case", "finding", "state"}, beside) == "none, bad-csv ");
    CHECK(read({"finding", "colour", "unti"}, beside) ==
          "none, unknown-column name it, unknown-column did you mean `unit`");
    CHECK(read({"case", "case"}, {}) == "none, bad-csv ");
    CHECK(read({"note", "note", "case", "sex"}, beside) == "wide");
}

TEST_CASE("errors stand at line and column of the cell") {
    CHECK(csv("case,sexx\na,female\n").errors() == "1:6 unknown-column");
    CHECK(csv("case,findings\na,seizures|low-set eers\n").errors() == "2:12 unknown-finding");
    CHECK(csv("case,findings\n\"a,b\",\"low-set eers\"\n").errors() == "2:8 unknown-finding");
    CHECK(csv("case,sex\na\n").errors() == "2:1 bad-csv");
    CHECK(csv("case,sex\na,\"fe\n").errors().ends_with("bad-csv"));
    CHECK(csv("case,finding,state\na,seizures,maybe\n").errors() == "2:12 unknown-state");
    CHECK(csv("case\n").errors() == "1:1 bad-csv");
    CHECK_FALSE(csv("").errors().empty());
}

TEST_CASE("the table of readers: names, endings, nothing twice") {
    std::vector<std::string_view> names;
    for (auto const& reader : case_readers()) {
        CHECK(std::find(names.begin(), names.end(), reader.name) == names.end());
        names.push_back(reader.name);
        CHECK(case_reader(reader.name) == &reader);
        CHECK_FALSE(reader.summary.empty());
    }
    CHECK(case_reader("nothing") == nullptr);
    CHECK(case_reader_for("x.csv")->name == "csv");
    CHECK(case_reader_for("x.yml")->name == "yaml");
    CHECK(case_reader_for("x.json")->name == "json");
    CHECK(case_reader_for("x.jsonl")->name == "jsonl");
    CHECK(case_reader_for("x.txt") == nullptr);
}
