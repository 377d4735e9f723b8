// SPDX-License-Identifier: MIT
#include "norms/units.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace asterism::norms {
namespace {

enum class Quantity { length, mass };

struct Unit {
    std::string_view name;
    Quantity quantity;
    double size;  // in millimetres or grams
};

constexpr std::array units{
    Unit{"mm", Quantity::length, 1},       Unit{"cm", Quantity::length, 10},
    Unit{"m", Quantity::length, 1000},     Unit{"in", Quantity::length, 25.4},
    Unit{"g", Quantity::mass, 1},          Unit{"kg", Quantity::mass, 1000},
    Unit{"lb", Quantity::mass, 453.59237}, Unit{"oz", Quantity::mass, 28.349523125},
};

Unit const* find(std::string_view name) {
    auto const found = std::ranges::find(units, name, &Unit::name);
    return found == units.end() ? nullptr : &*found;
}

}  // namespace

std::optional<double> convert(double value, std::string_view from, std::string_view to) {
    if (from == to) return value;
    auto const* source = find(from);
    auto const* target = find(to);
    if (source == nullptr || target == nullptr || source->quantity != target->quantity)
        return std::nullopt;
    constexpr double nine_decimals = 1e9;
    return std::round(value * source->size / target->size * nine_decimals) / nine_decimals;
}

}  // namespace asterism::norms
