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
