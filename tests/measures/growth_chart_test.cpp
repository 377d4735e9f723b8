// SPDX-License-Identifier: MIT
#include "render/growth_chart.h"
#include "assess/growth_curves.h"
#include "measures/measuring.h"
#include "testing.h"

#include <cctype>

using namespace asterism;
using namespace asterism::testing;

namespace {

/// The names of elements still open at the end, or a description of the first mismatch: enough of
/// an XML reader to tell that every element is closed in order and no attribute is left open.
std::string mismatch(std::string const& xml) {
    std::vector<std::string> open;
    for (std::size_t at = xml.find('<'); at != std::string::npos; at = xml.find('<', at + 1)) {
        auto const end = xml.find('>', at);
        if (end == std::string::npos) return "a tag is not closed";
        auto const tag = xml.substr(at + 1, end - at - 1);
        if (std::count(tag.begin(), tag.end(), '"') % 2 != 0) return "an open quote in " + tag;
        if (tag.front() == '/') {
            if (open.empty() || open.back() != tag.substr(1)) return "unexpected " + tag;
            open.pop_back();
        } else if (tag.back() != '/') {
            open.push_back(tag.substr(0, tag.find(' ')));
        }
    }
    return open.empty() ? "" : "open: " + open.back();
}

tl::expected<GrowthChart, std::string> chart(std::string const& case_text,
                                             std::string const& measure,
                                             std::string_view norm = {}) {
    Diagnostics diagnostics;
    auto const baby =
        read_case(make_source("case.yaml", case_text), *shipped().ontology, diagnostics);
    return growth_chart(*shipped().ontology, *shipped().standards, baby,
                        shipped().reading(case_text, measure), norm);
}

std::string const head =
    "sex: female\ngestation: 37w3d\nmeasures: { head-circumference: 29.5 cm }\n";

}  // namespace

TEST_CASE("the chart has the curves of the norm, in order, and the baby's point") {
    auto const drawn = chart(head, "head-circumference");
    REQUIRE(drawn);
    CHECK(drawn->days == GrowthChart::Days::gestation);
    CHECK(drawn->day == norms::point(37 * 7 + 3));
    CHECK(drawn->value == doctest::Approx(29.5));
    REQUIRE(drawn->lines.size() == 7);
    CHECK(drawn->lines.front().label == "+3 SD");
    for (std::size_t i = 1; i < drawn->lines.size(); ++i)
        CHECK(drawn->lines[i].points.front().second < drawn->lines[i - 1].points.front().second);
    // The median of girls at 37w3d, read off the table by another implementation: 32.791 cm.
    for (auto const& [day, value] : drawn->lines[3].points) {
        if (day == 262) CHECK(value == doctest::Approx(32.791).epsilon(0.0001));
    }
}

TEST_CASE("weight is drawn in the unit of the norm, age in days") {
    auto const drawn =
        chart("sex: male\ngestation: 39w0d\nage: 14d\nmeasures: { weight: 3400 g }\n", "weight");
    REQUIRE(drawn);
    CHECK(drawn->days == GrowthChart::Days::age);
    CHECK(drawn->unit == "kg");
    CHECK(drawn->value == doctest::Approx(3.4));
    CHECK(drawn->day == norms::point(14));
}

TEST_CASE("weeks without days are an error bar over seven days") {
    auto const drawn =
        chart("sex: female\ngestation: 37w\nmeasures: { head-circumference: 29.5 cm }\n",
              "head-circumference");
    REQUIRE(drawn);
    CHECK(drawn->day.high - drawn->day.low == 6);
}

TEST_CASE("no chart without a sex, without a norm, or for a norm without curves") {
    auto const no_sex = chart("gestation: 37w3d\nmeasures: { head-circumference: 29.5 cm }\n",
                              "head-circumference");
    REQUIRE_FALSE(no_sex);
    CHECK(no_sex.error().find("--sex") != std::string::npos);
    CHECK_FALSE(
        chart("sex: female\nmeasures: { head-circumference: 29.5 cm }\n", "head-circumference"));
    CHECK_FALSE(
        chart("sex: male\ngestation: 40w0d\nmeasures: { foot-length: 78 mm }\n", "foot-length"));
    CHECK(chart(head, "head-circumference", "olsen-2010"));
}

TEST_CASE("the SVG is well-formed, inert and names norm, population and units") {
    auto const svg = growth_chart_svg(*chart(head, "head-circumference"));
    CHECK(mismatch(svg) == "");
    for (auto const* part :
         {"xmlns=\"http://www.w3.org/2000/svg\"", "INTERGROWTH-21st", "eight countries",
          "head circumference (cm)", "gestation at birth (weeks)", "prefers-color-scheme: dark",
          "z -2.71"}) {
        CAPTURE(part);
        CHECK(svg.find(part) != std::string::npos);
    }
    CHECK(svg.find("<script") == std::string::npos);
    CHECK(svg.find("nan") == std::string::npos);
}

TEST_CASE("what the user wrote is made inert in the SVG") {
    auto drawn = *chart(head, "head-circumference");
    drawn.point_label = "</svg><script>alert(1)</script>";
    auto const svg = growth_chart_svg(drawn);
    CHECK(svg.find("<script") == std::string::npos);
    CHECK(mismatch(svg) == "");
}
