// SPDX-License-Identifier: MIT
#include "render/html.h"

#include "format_book.h"
#include "render/assessment_html_map.h"
#include "render/body_map.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

TEST_CASE("markup closes what it opens") {
    Markup m;
    m.open("p", {{"class", "a\"b"}}).element("b", "<x>").text("&");
    CHECK(m.take() == "<p class=\"a&quot;b\"><b>&lt;x&gt;</b>&amp;</p>");
    Markup scoped;
    {
        Scope const list(scoped, "ul");
        scoped.element("li", "1");
    }
    CHECK(scoped.take() == "<ul><li>1</li></ul>");
}

TEST_CASE("a picture as an address is its base64") {
    CHECK(svg_address("") == "data:image/svg+xml;base64,");
    CHECK(svg_address("M") == "data:image/svg+xml;base64,TQ==");
    CHECK(svg_address("Ma") == "data:image/svg+xml;base64,TWE=");
    CHECK(svg_address("Man") == "data:image/svg+xml;base64,TWFu");
    CHECK(svg_address("\xff\xfe\xfd\xfc") == "data:image/svg+xml;base64,//79/A==");
}

TEST_CASE("the map marks each region by its weightiest finding and numbers it once") {
    auto const baby = golden_case("everything");
    auto const found = found_by_region(baby.assessment, baby.context);
    auto const regions = marked_regions(baby.assessment, baby.context);
    auto const mark = [&](std::string const& id) {
        for (auto const& region : regions) {
            if (region.region == id) return region.mark;
        }
        return Mark::none;
    };
    CHECK(mark("eyes") == Mark::red_flag);
    CHECK(mark("mouth") == Mark::major);
    CHECK(mark("arms") == Mark::major);
    CHECK(mark("skin") == Mark::not_examined);
    int next = 1;
    for (auto const& region : found) {
        if (region.number == 0)
            CHECK_FALSE(has_place_on_map(region.region));
        else
            CHECK(region.number == next++);
    }
    CHECK(next > 4);
}

TEST_CASE("every region of the shipped ontology is on the map or is of the whole body") {
    std::vector<std::string> whole;
    for (auto const& region : shipped_book().ontology->regions) {
        if (!has_place_on_map(region.id.text)) whole.push_back(region.id.text);
    }
    CHECK(whole == std::vector<std::string>{"general", "skin", "limbs", "neurology", "history"});
}

TEST_CASE("the drawing has the number of every marked region and reads itself out") {
    auto const svg =
        body_map_svg({{"eyes", Mark::red_flag, 3}, {"spine", Mark::minor, 12}}, "said <so>");
    CHECK(svg.find(">3</text>") != std::string::npos);
    CHECK(svg.find(">12</text>") != std::string::npos);
    CHECK(svg.find("aria-label=\"said &lt;so&gt;\"") != std::string::npos);
    CHECK(svg.find("map-red") != std::string::npos);
    CHECK(body_map_svg({}, "").find("map-badge") == std::string::npos);
}

TEST_CASE("measures with curves become charts in the page, each with a text in its place") {
    auto const& book = shipped_book();
    auto baby = judged(book, file_text("examples/first-light/case.yaml"));
    CHECK(written("html", baby).find("<img") == std::string::npos);
    baby.context.charts = charts_of(baby.baby, *book.ontology, *book.standards);
    REQUIRE(baby.context.charts.size() >= 3);
    auto const page = written("html", baby);
    for (auto const& chart : baby.context.charts) {
        CHECK(page.find("alt=\"" + html_safe(chart.title) + "\"") != std::string::npos);
        CHECK(page.find(svg_address(chart.svg)) != std::string::npos);
    }
}
