// SPDX-License-Identifier: MIT
#include "base/quantity.h"

#include <array>
#include <cctype>
#include <cmath>

#include "base/number.h"

namespace asterism {

namespace {

enum class Kind { length, mass };

struct Unit {
    std::string_view name;
    Kind kind;
    double factor;  // to mm or to g
};

// International inch and avoirdupois pound are exact by definition (1959 agreement).
constexpr std::array units{
    Unit{"mm", Kind::length, 1},       Unit{"cm", Kind::length, 10},
    Unit{"in", Kind::length, 25.4},    Unit{"m", Kind::length, 1000},
    Unit{"g", Kind::mass, 1},          Unit{"kg", Kind::mass, 1000},
    Unit{"lb", Kind::mass, 453.59237}, Unit{"oz", Kind::mass, 28.349523125},
};

struct Alias {
    std::string_view written;
    std::string_view canonical;
};

constexpr std::array aliases{
    Alias{"inch", "in"},      Alias{"inches", "in"},    Alias{"\"", "in"},
    Alias{"gram", "g"},       Alias{"grams", "g"},      Alias{"gm", "g"},
    Alias{"kgs", "kg"},       Alias{"lbs", "lb"},       Alias{"pound", "lb"},
    Alias{"pounds", "lb"},    Alias{"ounce", "oz"},     Alias{"ounces", "oz"},
    Alias{"bpm", "/min"},     Alias{"per min", "/min"}, Alias{"per minute", "/min"},
    Alias{"/minute", "/min"}, Alias{"percent", "%"},    Alias{"mm Hg", "mmHg"},
    Alias{"mmhg", "mmHg"},    Alias{"deg", "degrees"},  Alias{"°", "degrees"},
};

Unit const* find_unit(std::string_view name) {
    for (auto const& unit : units) {
        if (unit.name == name) return &unit;
    }
    return nullptr;
}

bool in_number(char c) { return std::isdigit(static_cast<unsigned char>(c)) || c == '.'; }

std::size_t number_length(std::string_view text) {
    std::size_t at = !text.empty() && text.front() == '-' ? 1 : 0;
    while (at < text.size() && in_number(text[at])) ++at;
    return at;
}

tl::unexpected<std::string> not_a_quantity() {
    return tl::make_unexpected(std::string("expected a number and a unit such as `31.0 cm`"));
}

/// The ounces of `6 lb 4 oz`: adds the second part, in pounds, to the first.
Parsed<Quantity> with_ounces(Quantity const& pounds, std::string_view rest) {
    auto const length = number_length(rest);
    auto const ounces = parse_decimal(rest.substr(0, length));
    if (!ounces || canonical_unit(trim(rest.substr(length))) != "oz") return not_a_quantity();
    double const per_ounce = *conversion("oz", "lb");
    return Quantity{pounds.value + ounces->value * per_ounce,
                    std::pow(10, -ounces->decimals) * per_ounce, "lb"};
}

}  // namespace

Parsed<Quantity> parse_quantity(std::string_view text) {
    text = trim(text);
    auto const length = number_length(text);
    auto const number = parse_decimal(text.substr(0, length));
    if (!number) return not_a_quantity();
    auto const rest = trim(text.substr(length));
    auto const digit = rest.find_first_of("0123456789");
    Quantity quantity{number->value, std::pow(10, -number->decimals),
                      canonical_unit(trim(rest.substr(0, digit)))};
    if (digit == std::string_view::npos) return quantity;
    if (quantity.unit != "lb") return not_a_quantity();
    return with_ounces(quantity, rest.substr(digit));
}

std::optional<double> conversion(std::string_view from, std::string_view to) {
    if (from == to) return 1;
    auto const* a = find_unit(from);
    auto const* b = find_unit(to);
    if (!a || !b || a->kind != b->kind) return std::nullopt;
    return a->factor / b->factor;
}

std::string canonical_unit(std::string_view unit) {
    for (auto const& alias : aliases) {
        if (alias.written == unit) return std::string(alias.canonical);
    }
    return std::string(unit);
}

}  // namespace asterism
