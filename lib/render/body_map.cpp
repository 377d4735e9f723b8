// SPDX-License-Identifier: MIT
#include "render/body_map.h"

#include <algorithm>
#include <span>

#include <fmt/format.h>

#include "render/html.h"

namespace asterism {

namespace {

enum class View { front, back };

/// A closed outline of a region, drawn for a figure whose middle line stands at x = 0.
struct Outline {
    std::string_view region;
    View view;
    std::string_view path;
};

/// Where the number of a region stands, and the point that a thin line leads to, if any.
struct Badge {
    std::string_view region;
    View view;
    double x, y;
    double to_x, to_y;
};

constexpr int middle[] = {95, 265};  // of the front and of the back view

constexpr auto left_arm =
    "M-36 106 C-50 108 -64 130 -66 150 C-68 166 -64 184 -55 189 C-46 191 -45 180 -49 169 "
    "C-51 156 -45 142 -34 130 Z";
constexpr auto right_arm =
    "M36 106 C50 108 64 130 66 150 C68 166 64 184 55 189 C46 191 45 180 49 169 "
    "C51 156 45 142 34 130 Z";
constexpr auto left_leg =
    "M-31 208 C-43 226 -47 246 -41 262 C-37 274 -40 288 -46 298 C-48 308 -32 309 -27 300 "
    "C-20 286 -21 268 -21 254 C-21 240 -13 230 -4 220 Z";
constexpr auto right_leg =
    "M31 208 C43 226 47 246 41 262 C37 274 40 288 46 298 C48 308 32 309 27 300 "
    "C20 286 21 268 21 254 C21 240 13 230 4 220 Z";
constexpr auto left_ear = "M-38 52 C-46 50 -48 60 -45 68 C-43 75 -38 74 -37 68 Z";
constexpr auto right_ear = "M38 52 C46 50 48 60 45 68 C43 75 38 74 37 68 Z";
constexpr auto skull =
    "M0 8 C26 8 40 28 39 54 C38 78 20 96 0 96 C-20 96 -38 78 -39 54 C-40 28 -26 8 0 8 Z";
constexpr auto neck = "M-12 92 L12 92 L14 106 L-14 106 Z";
constexpr auto chest =
    "M-30 103 C-12 100 12 100 30 103 C38 104 38 112 36 122 L33 152 L-33 152 L-36 122 "
    "C-38 112 -38 104 -30 103 Z";
constexpr auto belly = "M-33 152 L33 152 C39 170 39 190 33 204 L-33 204 C-39 190 -39 170 -33 152 Z";

/// From the back to the front, so that a small part lies on the larger one.
constexpr Outline outlines[] = {
    {"arms", View::front, left_arm},
    {"arms", View::front, right_arm},
    {"legs", View::front, left_leg},
    {"legs", View::front, right_leg},
    {"ears", View::front, left_ear},
    {"ears", View::front, right_ear},
    {"neck", View::front, neck},
    {"chest", View::front, chest},
    {"abdomen", View::front, belly},
    {"hips", View::front, "M-34 200 C-20 198 -14 208 -16 220 C-26 224 -36 216 -34 200 Z"},
    {"hips", View::front, "M34 200 C20 198 14 208 16 220 C26 224 36 216 34 200 Z"},
    {"genitalia", View::front,
     "M0 200 C9 200 11 210 7 217 C4 222 -4 222 -7 217 C-11 210 -9 200 0 200 Z"},
    {"heart", View::front, "M10 137 C-2 128 2 116 10 121 C18 116 22 128 10 137 Z"},
    {"head", View::front, skull},
    {"face", View::front,
     "M0 44 C18 44 28 52 28 66 C28 82 14 93 0 93 C-14 93 -28 82 -28 66 C-28 52 -18 44 0 44 Z"},
    {"eyes", View::front, "M-19 60 C-15 55 -9 55 -5 60 C-9 64 -15 64 -19 60 Z"},
    {"eyes", View::front, "M19 60 C15 55 9 55 5 60 C9 64 15 64 19 60 Z"},
    {"nose", View::front, "M0 60 C4 66 6 72 3 74 C1 75 -1 75 -3 74 C-6 72 -4 66 0 60 Z"},
    {"mouth", View::front, "M-10 81 C-4 78 4 78 10 81 C5 87 -5 87 -10 81 Z"},
    {"arms", View::back, left_arm},
    {"arms", View::back, right_arm},
    {"legs", View::back, left_leg},
    {"legs", View::back, right_leg},
    {"ears", View::back, left_ear},
    {"ears", View::back, right_ear},
    {"neck", View::back, neck},
    {"", View::back, chest},
    {"", View::back, belly},
    {"", View::back, "M-33 190 C-40 214 -20 226 0 216 C20 226 40 214 33 190 Z"},
    {"spine", View::back, "M-7 106 C-3 103 3 103 7 106 L6 196 C3 201 -3 201 -6 196 Z"},
    {"anus", View::back, "M0 206 C5 206 5 216 0 216 C-5 216 -5 206 0 206 Z"},
    {"head", View::back, skull},
};

constexpr Badge badges[] = {
    {"head", View::front, -58, 14, -26, 28},    {"ears", View::front, -70, 46, -43, 60},
    {"face", View::front, -70, 80, -20, 74},    {"eyes", View::front, 62, 34, 14, 59},
    {"nose", View::front, 70, 60, 2, 70},       {"mouth", View::front, 66, 86, 6, 82},
    {"neck", View::front, -56, 104, -8, 100},   {"chest", View::front, -18, 122, -18, 122},
    {"heart", View::front, 74, 118, 13, 127},   {"abdomen", View::front, 0, 176, 0, 176},
    {"genitalia", View::front, 0, 246, 0, 214}, {"hips", View::front, -68, 212, -27, 210},
    {"arms", View::front, -57, 150, -57, 150},  {"legs", View::front, -32, 258, -32, 258},
    {"spine", View::back, 0, 144, 0, 144},      {"anus", View::back, 0, 246, 0, 212},
};

std::string_view class_of(Mark mark) {
    switch (mark) {
        case Mark::none: return "map-part";
        case Mark::not_examined: return "map-part map-open";
        case Mark::normal: return "map-part map-normal";
        case Mark::minor: return "map-part map-minor";
        case Mark::major: return "map-part map-major";
        case Mark::red_flag: return "map-part map-red";
    }
    return "map-part";
}

MapRegion find(std::vector<MapRegion> const& regions, std::string_view id) {
    auto const found = std::find_if(regions.begin(), regions.end(),
                                    [&](MapRegion const& r) { return r.region == id; });
    return found == regions.end() ? MapRegion{} : *found;
}

std::string number(double value) { return fmt::format("{:g}", value); }

void draw_view(Markup& svg, View view, std::vector<MapRegion> const& regions) {
    for (auto const& outline : outlines) {
        if (outline.view != view) continue;
        auto const mark = outline.region.empty() ? Mark::none : find(regions, outline.region).mark;
        svg.element("path", "",
                    {{"class", std::string(class_of(mark))}, {"d", std::string(outline.path)}})
            .new_line();
    }
}

void draw_badge(Markup& svg, Badge const& badge, int value) {
    if (badge.x != badge.to_x || badge.y != badge.to_y) {
        svg.element("line", "",
                    {{"class", "map-lead"},
                     {"x1", number(badge.x)},
                     {"y1", number(badge.y)},
                     {"x2", number(badge.to_x)},
                     {"y2", number(badge.to_y)}});
    }
    svg.element(
        "circle", "",
        {{"class", "map-badge"}, {"cx", number(badge.x)}, {"cy", number(badge.y)}, {"r", "9"}});
    svg.element("text", std::to_string(value),
                {{"class", "map-number"}, {"x", number(badge.x)}, {"y", number(badge.y + 4)}})
        .new_line();
}

void draw_side(Markup& svg, View view, std::vector<MapRegion> const& regions) {
    auto const x = middle[view == View::front ? 0 : 1];
    Scope const side(svg, "g", {{"transform", fmt::format("translate({} 0)", x)}});
    svg.new_line();
    draw_view(svg, view, regions);
    for (auto const& badge : badges) {
        auto const value = find(regions, badge.region).number;
        if (badge.view == view && value > 0) draw_badge(svg, badge, value);
    }
    svg.element("text", view == View::front ? "front" : "back",
                {{"class", "map-side"}, {"x", "0"}, {"y", "332"}});
}

void hatching(Markup& svg) {
    Scope const definitions(svg, "defs");
    Scope const pattern(svg, "pattern",
                        {{"id", "map-hatch"},
                         {"width", "6"},
                         {"height", "6"},
                         {"patternUnits", "userSpaceOnUse"},
                         {"patternTransform", "rotate(45)"}});
    svg.element("rect", "", {{"class", "map-hatch-ground"}, {"width", "6"}, {"height", "6"}});
    svg.element("line", "",
                {{"class", "map-hatch-line"}, {"x1", "0"}, {"y1", "0"}, {"x2", "0"}, {"y2", "6"}});
}

}  // namespace

bool has_place_on_map(std::string const& region) {
    return std::any_of(std::begin(badges), std::end(badges),
                       [&](Badge const& badge) { return badge.region == region; });
}

std::string body_map_svg(std::vector<MapRegion> const& regions, std::string const& description) {
    Markup svg;
    svg.open("svg", {{"xmlns", "http://www.w3.org/2000/svg"},
                     {"class", "map"},
                     {"role", "img"},
                     {"viewBox", "0 0 360 340"},
                     {"aria-label", description}});
    svg.new_line();
    hatching(svg);
    draw_side(svg, View::front, regions);
    draw_side(svg, View::back, regions);
    return svg.take();
}

std::string_view body_map_style() {
    return R"(.map { width: 100%; max-width: 30rem; height: auto; }
.map-part { fill: var(--map-plain); stroke: var(--map-line); stroke-width: 1.2; stroke-linejoin: round; }
.map-open { fill: url(#map-hatch); }
.map-normal { fill: var(--map-normal); stroke-width: 1.8; }
.map-minor { fill: var(--map-minor); stroke-width: 1.8; }
.map-major { fill: var(--map-major); stroke-width: 2.2; }
.map-red { fill: var(--map-red); stroke-width: 2.6; }
.map-hatch-ground { fill: var(--map-plain); }
.map-hatch-line { stroke: var(--map-line); stroke-width: 1.4; }
.map-lead { stroke: var(--ink); stroke-width: 1; }
.map-badge { fill: var(--paper); stroke: var(--ink); stroke-width: 1.4; }
.map-number { fill: var(--ink); font: bold 11px system-ui, sans-serif; text-anchor: middle; }
.map-side { fill: var(--soft); font: 12px system-ui, sans-serif; text-anchor: middle; }
)";
}

}  // namespace asterism
