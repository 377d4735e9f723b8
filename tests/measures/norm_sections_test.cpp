// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include "embedded/embedded.h"
#include "measures/measuring.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

/// One norm in one line, with some of its fields replaced or added.
std::string norm(std::string const& fields) {
    return "norms:\n  - { norm: n, population: p, evidence: memory, " + fields + " }\n";
}

std::string const good =
    "measure: width, kind: mean-sd, unit: mm, mean: 20, sd: 2, sources: [s-2000]";

void has(std::string const& problems, std::string const& part) {
    INFO(problems);
    CHECK(problems.find(part) != std::string::npos);
}

SourcePtr table(std::string text) { return make_source("ontology/norms/t.csv", std::move(text)); }

std::string const lms = "measure: girth, kind: lms, table: t.csv, by: age-day, sources: [s-2000]";

}  // namespace

TEST_CASE("a well-formed norm loads") { CHECK(norm_problems(norm(good)).empty()); }

TEST_CASE("an unknown key is refused at its place, with the nearest one") {
    has(norm_problems(norm(good + ", centile: []")), "o.yaml:18:");
    has(norm_problems(norm(good + ", centile: []")), "did you mean `centiles`");
}

TEST_CASE("measures and sources are looked up by id, with the nearest name") {
    has(norm_problems(
            norm("measure: widht, kind: mean-sd, unit: mm, mean: 2, sd: 1, sources: [s-2000]")),
        "did you mean `width`");
    has(norm_problems(
            norm("measure: width, kind: mean-sd, unit: mm, mean: 2, sd: 1, sources: [s-200]")),
        "did you mean `s-2000`");
}

TEST_CASE("kinds are a closed set") {
    has(norm_problems(
            norm("measure: width, kind: mean_sd, unit: mm, mean: 2, sd: 1, sources: [s-2000]")),
        "did you mean `mean-sd`");
}

TEST_CASE("numbers that do not go together are named") {
    has(norm_problems(norm("measure: width, kind: mean-sd, unit: mm, mean: 2, sources: [s-2000]")),
        "needs an SD above 0");
    has(norm_problems(norm(good + ", cut-offs: [ { below: 1, above: 2, means: odd } ]")),
        "exactly one of");
    has(norm_problems(norm(good + ", cut-offs: [ { means: odd } ]")), "exactly one of");
}

TEST_CASE("a window of gestation is in whole days, never in weeks alone or decimals") {
    has(norm_problems(norm(good + ", applies: { gestation: { from: 37w, to: 42w6d } }")),
        "expected weeks and days such as `37w0d`, found `37w`");
    has(norm_problems(norm(good + ", applies: { gestation: { from: 37.5, to: 42w6d } }")),
        "found `37.5`");
    has(norm_problems(norm(good + ", applies: { gestation: { from: 37w0d } }")),
        "needs `from` and `to`");
    has(norm_problems(norm(good + ", applies: { age: { to: soon } }")), "`soon` is not understood");
}

TEST_CASE("two norms may not share an id") {
    auto const twice = norm(good) + norm(good).substr(std::string("norms:\n").size());
    has(norm_problems(twice), "described twice");
}

TEST_CASE("everything wrong is reported in one run") {
    auto const problems =
        norm_problems(norm("measure: widht, kind: mean-sdd, unit: mm, meen: 2, sources: [x]"));
    for (auto const* part : {"widht", "mean-sdd", "meen", "`x`"}) has(problems, part);
}

TEST_CASE("a bundled table must be there, and every table must be used") {
    has(norm_problems(norm(lms)), "the table `t.csv` is not there");
    has(norm_problems(norm(good), {table("a,b\n1,2\n")}), "no norm has a table called `t.csv`");
}

TEST_CASE("a fault in a table is placed in the table") {
    std::string const head = "measurement,unit,sex,age_days,L,M,S\n";
    auto const problems = norm_problems(
        norm(lms), {table(head + "girth,cm,female,0,1,33,0.03\ngirth,cm,female,1,1,zero,0.03\n")});
    has(problems, "ontology/norms/t.csv:3:1");
}

TEST_CASE("a table that the user supplies carries the name of its norm") {
    has(norm_problems(norm(lms + ", bundled: false")), "is called `n.csv`");
    CHECK(
        norm_problems(norm("measure: girth, kind: lms, table: n.csv, by: age-day, bundled: false, "
                           "sources: [s-2000]"))
            .empty());
}

TEST_CASE("the digest of an ontology covers the tables") {
    Diagnostics diagnostics;
    auto const text = ontology_text(norm(good));
    auto const without = load_ontology({make_source("o.yaml", text)}, diagnostics);
    auto const with = load_ontology({make_source("o.yaml", text), table("a\n1\n")}, diagnostics);
    REQUIRE(without);
    REQUIRE(with);
    CHECK(without->digest != with->digest);
}

TEST_CASE("the shipped norms load, and each measure with a norm exists") {
    CHECK(shipped().standards->norms().size() >= 60);
    for (auto const& known : shipped().standards->norms()) {
        CHECK_FALSE(known.description.sources.empty());
        for (auto const& measure : known.description.measures)
            CHECK(shipped().ontology->measure(measure).has_value());
    }
}

TEST_CASE(
    "a supplied Fenton table is the norm of preterm babies after 72 hours, and stands beside at "
    "birth") {
    Diagnostics diagnostics;
    std::vector<SourcePtr> files;
    for (auto const& file : embedded::files()) {
        if (file.name.starts_with("ontology/"))
            files.push_back(make_source(std::string(file.name), std::string(file.text)));
    }
    // Invented rows: what matters here is where the table is used.
    std::string rows = "measurement,unit,sex,pma_days,L,M,S\n";
    for (auto const* measure : {"head_circumference,cm", "length,cm", "weight,kg"}) {
        for (int day = 210; day <= 230; ++day)
            rows += fmt::format("{},female,{},1,27,0.05\n", measure, day);
    }
    files.push_back(make_source(supplied_table_name("fenton-2013"), rows));
    auto ontology = load_ontology(files, diagnostics);
    REQUIRE(ontology);
    auto const standards = read_standards(*ontology, diagnostics);
    REQUIRE(standards);
    norms::Query query{
        "head-circumference",       27, "cm", 0, norms::Sex::female, norms::gestation(30, 0),
        std::chrono::hours(14 * 24)};
    auto const later = standards->preferred(query);
    REQUIRE(later);
    CHECK(later->norm == "fenton-2013");
    CHECK(later->z->low == doctest::Approx(0));
    CHECK(later->evaluations.front().key == 30 * 7 + 14);
    query.age = std::chrono::hours(24);
    CHECK(standards->preferred(query)->norm == "intergrowth-very-preterm");
}
