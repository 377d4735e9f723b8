// SPDX-License-Identifier: MIT
#include "conditions/range.h"

#include <cmath>

#include <fmt/format.h>

#include "base/number.h"
#include "yaml/reader.h"

namespace asterism {

namespace {

std::optional<double> bound(yaml::Node const& node, BoundSyntax const& syntax,
                            Diagnostics& diagnostics) {
    if (!node.is_scalar()) {
        yaml::wrong_form(node, "one value", diagnostics);
        return std::nullopt;
    }
    auto const value = syntax.parse(node.text);
    if (value) return *value;
    diagnostics.error("bad-bound", node.span,
                      fmt::format("`{}` is not understood: {}", node.text, value.error()));
    return std::nullopt;
}

void set_low(Range& range, std::optional<double> value, bool open) {
    if (value) range.low = *value, range.low_open = open;
}

void set_high(Range& range, std::optional<double> value, bool open) {
    if (value) range.high = *value, range.high_open = open;
}

void read_between(yaml::Node const& node, BoundSyntax const& syntax, Range& range,
                  Diagnostics& diagnostics) {
    if (!node.is_list() || node.items.size() != 2)
        return yaml::wrong_form(node, "two values, from and to", diagnostics);
    set_low(range, bound(node.items[0], syntax, diagnostics), false);
    set_high(range, bound(node.items[1], syntax, diagnostics), false);
}

}  // namespace

Truth Range::contains(double from, double to) const {
    auto const above_low = [&](double v) { return low_open ? v > low : v >= low; };
    auto const below_high = [&](double v) { return high_open ? v < high : v <= high; };
    if (above_low(from) && below_high(to)) return Truth::yes;
    if (!above_low(to) || !below_high(from)) return Truth::no;
    return Truth::unknown;
}

BoundSyntax number_bounds() {
    return {[](std::string_view text) -> Parsed<double> {
                auto const number = parse_decimal(trim(text));
                if (!number) return tl::make_unexpected(std::string("expected a decimal number"));
                return number->value;
            },
            [](double value) { return to_text(value); }};
}

BoundSyntax duration_bounds() {
    return {[](std::string_view text) -> Parsed<double> {
                return parse_duration(text).map(
                    [](Duration d) { return static_cast<double>(d.hours); });
            },
            [](double hours) { return to_text(Duration{static_cast<int>(std::lround(hours))}); }};
}

BoundSyntax gestation_bounds() {
    return {[](std::string_view text) -> Parsed<double> {
                auto const gestation = parse_gestation(text);
                if (!gestation) return tl::make_unexpected(gestation.error());
                if (!gestation->exact())
                    return tl::make_unexpected(std::string("a bound needs weeks and days"));
                return static_cast<double>(gestation->min_days);
            },
            [](double days) {
                auto const whole = static_cast<int>(std::lround(days));
                return to_text(Gestation{whole, whole});
            }};
}

yaml::Shape range_shape() {
    auto const value = yaml::word_shape();
    yaml::Shape shape{yaml::Shape::Kind::record, "bounds", {}, {}, {}, nullptr, 1};
    shape.fields = {
        {"above", false, "larger than this", value},
        {"at-least", false, "this or larger", value},
        {"below", false, "smaller than this", value},
        {"at-most", false, "this or smaller", value},
        {"between", false, "from and to, both included", yaml::list_shape(value, 2, 2)}};
    return shape;
}

bool read_range(yaml::Node const& node, BoundSyntax const& syntax, Range& range,
                Diagnostics& diagnostics) {
    Diagnostics problems;
    if (!node.is_map() || node.entries.empty())
        yaml::wrong_form(node, "bounds such as `{ below: 5 }`", problems);
    for (auto const& [key, value] : node.entries) {
        if (key.text == "above")
            set_low(range, bound(value, syntax, problems), true);
        else if (key.text == "at-least")
            set_low(range, bound(value, syntax, problems), false);
        else if (key.text == "below")
            set_high(range, bound(value, syntax, problems), true);
        else if (key.text == "at-most")
            set_high(range, bound(value, syntax, problems), false);
        else if (key.text == "between")
            read_between(value, syntax, range, problems);
        else
            yaml::unknown_word(key, "key", {"above", "below", "at-least", "at-most", "between"},
                               problems);
    }
    bool const crossed =
        range.low > range.high || (range.low == range.high && (range.low_open || range.high_open));
    if (crossed) problems.error("empty-range", node.span, "no value can lie within these bounds");
    diagnostics.append(problems);
    return !problems.has_errors();
}

std::string describe(Range const& range, BoundSyntax const& syntax) {
    bool const low = std::isfinite(range.low);
    bool const high = std::isfinite(range.high);
    if (low && high && !range.low_open && !range.high_open)
        return fmt::format("from {} to {}", syntax.print(range.low), syntax.print(range.high));
    auto const above = range.low_open ? "above" : "at least";
    auto const below = range.high_open ? "below" : "at most";
    if (low && high)
        return fmt::format("{} {} and {} {}", above, syntax.print(range.low), below,
                           syntax.print(range.high));
    return low ? fmt::format("{} {}", above, syntax.print(range.low))
               : fmt::format("{} {}", below, syntax.print(range.high));
}

}  // namespace asterism
