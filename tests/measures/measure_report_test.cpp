// SPDX-License-Identifier: MIT
#include <nlohmann/json.hpp>

#include "assess/measure_report.h"
#include "measures/measuring.h"
#include "render/measure_report.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

std::vector<MeasureReport> reports(std::string const& case_text, std::string_view norm = {}) {
    Diagnostics diagnostics;
    auto const baby =
        read_case(make_source("case.yaml", case_text), *shipped().ontology, diagnostics);
    REQUIRE_FALSE(diagnostics.has_errors());
    return measure_reports(*shipped().ontology, *shipped().standards, baby, norm);
}

std::string const head =
    "sex: female\ngestation: 37w3d\nmeasures: { head-circumference: 29.5 cm }\n";

}  // namespace

TEST_CASE("every norm that applies stands side by side, the others with the reason") {
    auto const report = reports(head).front();
    REQUIRE(report.results.size() == 2);
    CHECK(report.results[0].norm == "intergrowth-newborn");
    CHECK(report.results[0].preferred);
    CHECK(report.results[1].norm == "olsen-2010");
    CHECK_FALSE(report.results[1].preferred);
    bool who = false;
    for (auto const& none : report.without) who = who || none.norm == "who-2006";
    CHECK(who);
}

TEST_CASE("one norm may be picked") {
    auto const report = reports(head, "olsen-2010").front();
    REQUIRE(report.results.size() == 1);
    CHECK(report.results[0].norm == "olsen-2010");
    CHECK(report.without.empty());
}

TEST_CASE("the JSON of one measure: z and centile are numbers, the bands carry the margin") {
    auto const json = measure_report_json(reports(head));
    CHECK(json["schema"] == "asterism.measure/1");
    auto const& result = json["results"][0];
    CHECK(result["norm"] == "intergrowth-newborn");
    CHECK(result["z"].get<double>() == doctest::Approx(-2.7144).epsilon(0.0001));
    CHECK(result["z_band"][0].get<double>() < -2.7144);
    CHECK(result["z_band"][1].get<double>() > -2.7144);
    CHECK(result["centile"].get<double>() == doctest::Approx(0.332).epsilon(0.01));
    CHECK(result.contains("note"));
    CHECK(json["value_band"][0].get<double>() == doctest::Approx(29.45));
}

TEST_CASE("a z that is only known as a band is null, with the band beside it") {
    auto const json = measure_report_json(
        reports("sex: female\ngestation: 37w\nmeasures: { head-circumference: 29.5 cm }\n"));
    CHECK(json["results"][0]["z"].is_null());
    CHECK(json["results"][0]["z_band"].size() == 2);
}

TEST_CASE("several measures stand in a list, computed ones too") {
    auto const json = measure_report_json(reports(
        "sex: male\ngestation: 40w0d\nmeasures: { head-circumference: 34 cm, length: 50 cm }\n"));
    REQUIRE(json["measures"].size() == 3);
    CHECK(json["measures"][2]["measure"] == "head-against-length");
    CHECK(json["measures"][2]["computed"] == true);
}

TEST_CASE("the text names norm, population, sources and conflicts") {
    auto const text = measure_report_text(
        reports("sex: male\ngestation: 40w0d\nmeasures: { penile-length: 2.4 cm }\n"));
    for (auto const* part : {"penile-length-feldman (preferred)", "z -2.75", "United States",
                             "feldman-1975", "Tehran", "more than 2.5 SD below the mean"}) {
        CAPTURE(part);
        CHECK(text.find(part) != std::string::npos);
    }
}

TEST_CASE("a norm that prints limits only has no z") {
    auto const json = measure_report_json(reports(
        "sex: male\ngestation: 40w0d\nage: 26h\nmeasures: { sacral-dimple-width: 7 mm }\n"));
    CHECK(json["results"][0]["z"].is_null());
    CHECK(json["results"][0]["note"] == "atypical (above 5 mm)");
}
