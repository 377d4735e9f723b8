// SPDX-License-Identifier: MIT
#include "render/growth_chart.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/number.h"
#include "render/html.h"
#include "render/layout.h"

namespace asterism {

namespace {

constexpr double width = 760;
constexpr double height = 560;
constexpr double left = 70, right = 690;  // of the plot; labels of the curves stand right of it
constexpr double bottom = 500;
constexpr double title_line = 18;
constexpr double cap = 7;  // half the width of an error bar's end
constexpr int characters_in_a_line = 105;

constexpr auto style = R"(
svg { color-scheme: light dark; }
.ground { fill: #ffffff; } .ink { fill: #1b1f24; } .soft { fill: #57606a; }
.grid { stroke: #d8dee4; stroke-width: 1; } .axis { stroke: #57606a; stroke-width: 1; fill: none; }
.curve { stroke: #0969da; stroke-width: 1.4; fill: none; } .median { stroke-width: 2.4; }
.outer { stroke: #57606a; stroke-dasharray: 5 4; }
.baby { fill: #bc4c00; stroke: #bc4c00; stroke-width: 1.5; }
.tag { paint-order: stroke; stroke: #ffffff; stroke-width: 4px; stroke-linejoin: round; }
text { font-family: system-ui, sans-serif; font-size: 12px; } .title { font-size: 15px; font-weight: 600; }
@media (prefers-color-scheme: dark) {
.ground { fill: #0d1117; } .ink { fill: #e6edf3; } .soft { fill: #9da7b1; }
.grid { stroke: #30363d; } .axis { stroke: #9da7b1; } .curve { stroke: #58a6ff; }
.outer { stroke: #9da7b1; } .baby { fill: #ffa657; stroke: #ffa657; } .tag { stroke: #0d1117; }
}
)";

std::string px(double value) { return fmt::format("{:.1f}", value); }

/// A round step that gives about `wanted` ticks over a span.
double tick_step(double span, double wanted) {
    double const raw = span / wanted;
    double const power = std::pow(10, std::floor(std::log10(raw)));
    for (double const factor : {1.0, 2.0, 5.0}) {
        if (raw <= factor * power) return factor * power;
    }
    return 10 * power;
}

struct Axis {
    double from = 0, to = 1;        // in data
    double at_from = 0, at_to = 1;  // in pixels

    double operator()(double value) const {
        return at_from + (value - from) / (to - from) * (at_to - at_from);
    }
};

class Drawing {
public:
    explicit Drawing(GrowthChart const& chart) : chart_(chart) {}

    std::string draw() {
        open();
        titles();
        set_axes();
        grid();
        for (auto const& line : chart_.lines) curve(line);
        curve_labels();
        baby();
        return svg_.take() + "\n";
    }

private:
    void open() {
        svg_.open("svg", {{"xmlns", "http://www.w3.org/2000/svg"},
                          {"viewBox", fmt::format("0 0 {} {}", width, height)},
                          {"width", px(width)},
                          {"height", px(height)},
                          {"role", "img"},
                          {"aria-labelledby", "chart-title chart-description"}});
        svg_.element("title", chart_.title, {{"id", "chart-title"}});
        svg_.element("desc", "The baby: " + chart_.point_label, {{"id", "chart-description"}});
        svg_.open("style").trusted(style).close();
        shape("rect", {{"class", "ground"}, {"width", px(width)}, {"height", px(height)}});
    }

    void titles() {
        double y = 26;
        text(20, y, chart_.title, "ink title", "start");
        for (auto const& subtitle : chart_.subtitles) {
            for (auto const& line : split(subtitle))
                text(20, y += title_line, line, "soft", "start");
        }
        top_ = y + 22;
    }

    /// A title's words in lines that fit the width.
    static std::vector<std::string> split(std::string const& text) {
        std::vector<std::string> lines{""};
        std::size_t at = 0;
        while (at < text.size()) {
            auto const space = std::min(text.find(' ', at), text.size());
            auto const word = text.substr(at, space - at);
            bool const full = lines.back().size() + word.size() > characters_in_a_line;
            if (full) lines.emplace_back();
            lines.back() += (lines.back().empty() ? "" : " ") + word;
            at = space + 1;
        }
        return lines;
    }

    void set_axes() {
        double low = chart_.with_margin.low, high = chart_.with_margin.high;
        double first = chart_.day.low, last = chart_.day.high;
        for (auto const& line : chart_.lines) {
            for (auto const& [day, value] : line.points) {
                low = std::min(low, value), high = std::max(high, value);
                first = std::min(first, day), last = std::max(last, day);
            }
        }
        double const margin = (high - low) * 0.04;
        x_ = {first, std::max(last, first + 1), left, right};
        y_ = {low - margin, high + margin, bottom, top_};
    }

    bool in_days() const { return chart_.days == GrowthChart::Days::age; }

    /// Ticks stand at whole weeks of gestation; tables by completed week have one row a week.
    double days_in_a_week() const {
        return chart_.days == GrowthChart::Days::completed_weeks ? 1 : 7;
    }

    void grid() {
        double const week = days_in_a_week();
        double const span = (x_.to - x_.from) / (in_days() ? 1 : week);
        double const step = std::max(1.0, tick_step(span, 14)) * (in_days() ? 1 : week);
        for (double at = std::ceil(x_.from / step) * step; at <= x_.to; at += step) {
            line("grid", x_(at), top_, x_(at), bottom);
            text(x_(at), bottom + 18, to_text(in_days() ? at : at / week), "soft", "middle");
        }
        double const rise = tick_step(y_.to - y_.from, 9);
        for (double at = std::ceil(y_.from / rise) * rise; at <= y_.to; at += rise) {
            line("grid", left, y_(at), right, y_(at));
            text(left - 8, y_(at) + 4, fmt::format("{:g}", std::round(at / rise) * rise), "soft",
                 "end");
        }
        line("axis", left, bottom, right, bottom);
        line("axis", left, top_, left, bottom);
        text((left + right) / 2, bottom + 40, day_label(), "ink", "middle");
        auto const middle = (top_ + bottom) / 2;
        svg_.element("text", chart_.value_label,
                     {{"class", "ink"},
                      {"text-anchor", "middle"},
                      {"transform", fmt::format("translate(20 {}) rotate(-90)", px(middle))}});
        svg_.new_line();
    }

    std::string day_label() const {
        switch (chart_.days) {
            case GrowthChart::Days::gestation: return "gestation at birth (weeks)";
            case GrowthChart::Days::completed_weeks: return "gestation at birth (completed weeks)";
            case GrowthChart::Days::age: return "age (days)";
            case GrowthChart::Days::post_menstrual: return "post-menstrual age (weeks)";
        }
        return {};
    }

    void curve(GrowthLine const& line) {
        std::string path;
        for (auto const& [day, value] : line.points)
            path += fmt::format("{}{} {}", path.empty() ? "M" : "L", px(x_(day)), px(y_(value)));
        auto const* const kind = line.z == 0      ? "curve median"
                                 : is_outer(line) ? "curve outer"
                                                  : "curve";
        shape("path", {{"class", kind}, {"d", path}});
    }

    static bool is_outer(GrowthLine const& line) { return std::abs(line.z) >= 2; }

    /// From the top down; where curves run close together their labels are pushed apart.
    void curve_labels() {
        constexpr double least = 13;
        double above = -HUGE_VAL;
        for (auto const& line : chart_.lines) {
            above = std::max(above + least, y_(line.points.back().second) + 4);
            text(right + 6, above, line.label, "soft", "start");
        }
        text(right + 6, top_ - 6, "centile", "soft", "start");
    }

    void baby() {
        double const middle = (x_(chart_.day.low) + x_(chart_.day.high)) / 2;
        double const y = y_(chart_.value);
        bar(middle, y_(chart_.with_margin.low), middle, y_(chart_.with_margin.high));
        bar(x_(chart_.day.low), y, x_(chart_.day.high), y);
        shape("circle", {{"class", "baby"}, {"cx", px(middle)}, {"cy", px(y)}, {"r", "3"}});
        bool const on_the_right = middle > (left + right) / 2;
        text(middle + (on_the_right ? -14 : 14), y + 22, chart_.point_label, "ink tag",
             on_the_right ? "end" : "start");
    }

    /// An error bar with caps wider than the point, so that a tenth of a centimetre is still seen.
    void bar(double x1, double y1, double x2, double y2) {
        if (x1 == x2 && y1 == y2) return;
        line("baby", x1, y1, x2, y2);
        double const across_x = y1 == y2 ? 0 : cap, across_y = y1 == y2 ? cap : 0;
        line("baby", x1 - across_x, y1 - across_y, x1 + across_x, y1 + across_y);
        line("baby", x2 - across_x, y2 - across_y, x2 + across_x, y2 + across_y);
    }

    void shape(std::string_view tag, Attributes const& attributes) {
        svg_.open(tag, attributes).close().new_line();
    }

    void line(std::string_view kind, double x1, double y1, double x2, double y2) {
        shape("line", {{"class", std::string(kind)},
                       {"x1", px(x1)},
                       {"y1", px(y1)},
                       {"x2", px(x2)},
                       {"y2", px(y2)}});
    }

    void text(double x, double y, std::string const& words, std::string const& kind,
              std::string const& anchor) {
        svg_.element("text", words,
                     {{"class", kind}, {"x", px(x)}, {"y", px(y)}, {"text-anchor", anchor}});
        svg_.new_line();
    }

    GrowthChart const& chart_;
    Markup svg_;
    Axis x_, y_;
    double top_ = 0;
};

}  // namespace

std::string growth_chart_svg(GrowthChart const& chart) { return Drawing(chart).draw(); }

}  // namespace asterism
