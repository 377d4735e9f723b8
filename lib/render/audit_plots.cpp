// SPDX-License-Identifier: MIT
#include "render/audit_plots.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace asterism {

namespace {

// In units of the picture, which is as wide as a small phone's page in letters of 14.
constexpr double width = 480, left = 12, right = 468;
constexpr double line_height = 44, axis_height = 30, picture_height = 240;
constexpr double chart_left = 52, chart_top = 14, chart_bottom = 200;

std::string px(double value) { return fmt::format("{:.1f}", value); }

class Picture {
public:
    Picture(Markup& markup, std::string const& caption, double height) : m_(markup) {
        m_.open("svg", {{"class", "plot"},
                        {"viewBox", fmt::format("0 0 {} {}", width, height)},
                        {"role", "img"},
                        {"aria-label", caption}});
        m_.new_line();
    }
    Picture(Picture const&) = delete;
    Picture& operator=(Picture const&) = delete;
    ~Picture() { m_.close().new_line(); }

    void line(double x1, double y1, double x2, double y2, std::string_view kind) {
        m_.element("line", "",
                   {{"class", std::string(kind)},
                    {"x1", px(x1)},
                    {"y1", px(y1)},
                    {"x2", px(x2)},
                    {"y2", px(y2)}});
        m_.new_line();
    }
    void text(double x, double y, std::string const& words, std::string_view kind,
              std::string_view anchor = "start") {
        m_.element("text", words,
                   {{"class", std::string(kind)},
                    {"x", px(x)},
                    {"y", px(y)},
                    {"text-anchor", std::string(anchor)}});
        m_.new_line();
    }
    void path(std::string const& points, std::string_view kind) {
        m_.element("path", "", {{"class", std::string(kind)}, {"d", points}}).new_line();
    }
    void dot(double x, double y, bool outside) {
        constexpr double size = 7;
        if (outside)
            return path(fmt::format("M{} {}L{} {}L{} {}L{} {}Z", px(x - size), px(y), px(x),
                                    px(y - size), px(x + size), px(y), px(x), px(y + size)),
                        "out");
        m_.element("circle", "", {{"class", "dot"}, {"cx", px(x)}, {"cy", px(y)}, {"r", "3.5"}});
        m_.new_line();
    }

private:
    Markup& m_;
};

/// The top of the scale: a round share above everything drawn.
double top_of(audit::ControlChart const& chart) {
    double top = 0.01;
    for (auto const& p : chart.points) top = std::max({top, p.share(), p.high});
    for (double const round : {.01, .02, .05, .1, .2, .3, .4, .5, .6, .8})
        if (top <= round) return round;
    return 1;
}

class Chart {
public:
    Chart(Markup& markup, std::string const& caption, audit::ControlChart const& chart)
        : picture_(markup, caption, picture_height), chart_(chart), top_(top_of(chart)) {}

    void draw() {
        constexpr int ticks = 4;
        for (int i = 0; i <= ticks; ++i) {
            double const share = top_ * i / ticks;
            picture_.line(chart_left, y(share), right, y(share), "grid");
            picture_.text(chart_left - 6, y(share) + 5, fmt::format("{:.3g} %", share * 100),
                          "tick", "end");
        }
        picture_.line(chart_left, y(chart_.mean), right, y(chart_.mean), "mean");
        picture_.path(limit(false), "limit");
        picture_.path(limit(true), "limit");
        picture_.path(course(), "course");
        for (std::size_t i = 0; i < chart_.points.size(); ++i) {
            auto const& p = chart_.points[i];
            picture_.dot(x(i), y(p.share()), p.outside());
        }
        periods();
    }

private:
    double step() const { return (right - chart_left) / static_cast<double>(chart_.points.size()); }
    double x(std::size_t i) const { return chart_left + (static_cast<double>(i) + 0.5) * step(); }
    double y(double share) const {
        return chart_bottom - share / top_ * (chart_bottom - chart_top);
    }

    std::string limit(bool high) const {
        std::string path;
        for (std::size_t i = 0; i < chart_.points.size(); ++i) {
            double const at = y(high ? chart_.points[i].high : chart_.points[i].low);
            path += fmt::format("{}{} {}H{}", i == 0 ? "M" : "L", px(x(i) - step() / 2), px(at),
                                px(x(i) + step() / 2));
        }
        return path;
    }

    std::string course() const {
        std::string path;
        for (std::size_t i = 0; i < chart_.points.size(); ++i)
            path += fmt::format("{}{} {}", i == 0 ? "M" : "L", px(x(i)),
                                px(y(chart_.points[i].share())));
        return path;
    }

    void periods() {
        constexpr std::size_t room = 5;  // labels side by side
        auto const every = (chart_.points.size() + room - 1) / room;
        for (std::size_t i = 0; i < chart_.points.size(); i += every)
            picture_.text(x(i), chart_bottom + 22, chart_.points[i].period, "tick", "middle");
    }

    Picture picture_;
    audit::ControlChart const& chart_;
    double top_;
};

}  // namespace

void forest_plot(Markup& markup, std::string const& caption, std::vector<ForestLine> const& lines) {
    double const bottom = line_height * static_cast<double>(lines.size()) + 6;
    Picture picture(markup, caption, bottom + axis_height);
    auto const x = [](double share) { return left + share * (right - left); };
    for (int i = 0; i <= 4; ++i) {
        picture.line(x(i / 4.0), 0, x(i / 4.0), bottom, "grid");
        auto const* const anchor = i == 0 ? "start" : i == 4 ? "end" : "middle";
        picture.text(x(i / 4.0), bottom + 20, fmt::format("{} %", i * 25), "tick", anchor);
    }
    constexpr double to_text = 18, to_line = 30, cap = 5;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        double const y = line_height * static_cast<double>(i);
        auto const& line = lines[i];
        picture.text(left, y + to_text, line.label, "name");
        picture.text(right, y + to_text, line.words, "tick", "end");
        picture.line(x(line.interval.low), y + to_line, x(line.interval.high), y + to_line, "bar");
        for (double const end : {line.interval.low, line.interval.high})
            picture.line(x(end), y + to_line - cap, x(end), y + to_line + cap, "bar");
        picture.dot(x(line.value), y + to_line, false);
    }
}

void chart_plot(Markup& markup, std::string const& caption, audit::ControlChart const& chart) {
    Chart(markup, caption, chart).draw();
}

std::string_view audit_plot_style() {
    return R"(.plots { display: grid; gap: 1.2rem; grid-template-columns: repeat(auto-fit, minmax(min(100%, 22rem), 1fr)); }
.plot { display: block; width: 100%; height: auto; max-width: 44rem; background: var(--panel); border-radius: .3rem; }
.plot text { font: 14px system-ui, "Segoe UI", sans-serif; fill: var(--ink); }
.plot .tick { fill: var(--soft); font-size: 12.5px; }
.plot .grid { stroke: var(--rule); stroke-width: 1; }
.plot .bar { stroke: var(--link); stroke-width: 2.5; } .plot .dot { fill: var(--link); }
.plot .course { fill: none; stroke: var(--link); stroke-width: 1.5; }
.plot .mean { stroke: var(--ink); stroke-width: 1.5; }
.plot .limit { fill: none; stroke: var(--soft); stroke-width: 1.5; stroke-dasharray: 6 4; }
.plot .out { fill: var(--red); stroke: var(--red); }
td.n, th.n { text-align: right; font-variant-numeric: tabular-nums; }
td:last-child, th:last-child { padding-right: 0; }
table.four { max-width: 30rem; }
.figures { margin: .4rem 0; padding: 0; list-style: none; }
.note { color: var(--soft); font-size: .92rem; }
.badge { font-weight: 600; } .badge.emergency, .badge.same-day { color: var(--red); } .badge.urgent { color: var(--amber); }
.item { margin: .6rem 0; padding-left: .8rem; border-left: 4px solid var(--rule); break-inside: avoid; }
.item p { margin: .1rem 0; } .item.emergency, .item.same-day { border-left-color: var(--red); }
.item.urgent { border-left-color: var(--amber); }
@media print { .plots { grid-template-columns: 1fr 1fr; } .plot { border: 1px solid var(--rule); }
  .plot .out { fill: #000; stroke: #000; } figure, table { break-inside: avoid; } }
)";
}

}  // namespace asterism
