// SPDX-License-Identifier: MIT
#include "norms/scale.h"

#include <algorithm>
#include <cmath>

namespace asterism::norms {
namespace {

template <class... Cases>
struct Overloaded : Cases... {
    using Cases::operator()...;
};
template <class... Cases>
Overloaded(Cases...) -> Overloaded<Cases...>;

tl::unexpected<Why> none(Why why) { return tl::make_unexpected(why); }

bool has_who_tail(LmsScale const& scale, std::string_view measure) {
    return std::ranges::find(scale.who_tail, measure) != scale.who_tail.end();
}

VeryPreterm const* equation_of(VeryPretermScale const& scale, std::string_view measure) {
    auto const found = std::ranges::find(scale.equations, measure, &VeryPreterm::measure);
    return found == scale.equations.end() ? nullptr : &*found;
}

VeryPreterm const* equation_at(VeryPretermScale const& scale, Place place) {
    auto const* equation = equation_of(scale, place.measure);
    return equation != nullptr && contains(equation->days, {place.key, place.key}) ? equation
                                                                                   : nullptr;
}

tl::expected<double, Why> finite(std::optional<double> z, Why otherwise) {
    if (!z) return none(otherwise);
    if (!std::isfinite(*z)) return none(Why::beyond);
    return *z;
}

tl::expected<double, Why> z_in(LmsScale const& scale, Place place, double value) {
    auto const* lms = scale.table.find(place.measure, place.sex, place.key);
    if (lms == nullptr) return none(Why::not_in_table);
    auto const tail = has_who_tail(scale, place.measure);
    return finite(tail ? lms_z_with_who_tail(value, *lms) : lms_z(value, *lms), Why::value);
}

tl::expected<double, Why> z_in(SkewTScale const& scale, Place place, double value) {
    auto const* parameters = scale.table.find(place.measure, place.sex, place.key);
    if (parameters == nullptr) return none(Why::not_in_table);
    return finite(skew_t_z(value, *parameters), Why::value);
}

tl::expected<double, Why> z_in(VeryPretermScale const& scale, Place place, double value) {
    auto const* equation = equation_at(scale, place);
    if (equation == nullptr) return none(Why::not_in_table);
    return finite(very_preterm_z(value, *equation, place.sex, place.key), Why::value);
}

tl::expected<double, Why> z_in(MeanSdScale const& scale, Place place, double value) {
    return finite(mean_sd_z(value, scale.parameters, place.key), Why::value);
}

std::optional<double> value_in(LmsScale const& scale, Place place, double z) {
    auto const* lms = scale.table.find(place.measure, place.sex, place.key);
    if (lms == nullptr) return std::nullopt;
    return has_who_tail(scale, place.measure) ? lms_value_with_who_tail(z, *lms)
                                              : lms_value(z, *lms);
}

std::optional<double> value_in(SkewTScale const& scale, Place place, double z) {
    auto const* parameters = scale.table.find(place.measure, place.sex, place.key);
    if (parameters == nullptr) return std::nullopt;
    return skew_t_value(z, *parameters);
}

std::optional<double> value_in(VeryPretermScale const& scale, Place place, double z) {
    auto const* equation = equation_at(scale, place);
    if (equation == nullptr) return std::nullopt;
    return very_preterm_value(z, *equation, place.sex, place.key);
}

std::optional<double> value_in(MeanSdScale const& scale, Place place, double z) {
    return mean_sd_value(z, scale.parameters, place.key);
}

}  // namespace

bool is_by_sex(Scale const& scale) { return !std::holds_alternative<MeanSdScale>(scale); }

tl::expected<double, Why> z_at(Scale const& scale, Place place, double value) {
    return std::visit([&](auto const& kind) { return z_in(kind, place, value); }, scale);
}

std::optional<double> value_at(Scale const& scale, Place place, double z) {
    auto const value =
        std::visit([&](auto const& kind) { return value_in(kind, place, z); }, scale);
    return value && std::isfinite(*value) ? value : std::nullopt;
}

std::optional<DayRange> keys_of(Scale const& scale, std::string_view measure, Sex sex) {
    using Keys = std::optional<DayRange>;
    return std::visit(
        Overloaded{[&](VeryPretermScale const& kind) -> Keys {
                       auto const* equation = equation_of(kind, measure);
                       return equation == nullptr ? Keys{} : Keys{equation->days};
                   },
                   [](MeanSdScale const&) -> Keys { return std::nullopt; },
                   [&](auto const& kind) -> Keys { return kind.table.keys(measure, sex); }},
        scale);
}

std::string const* unit_of(Scale const& scale, std::string_view measure) {
    using Unit = std::string const*;
    return std::visit(
        Overloaded{[&](VeryPretermScale const& kind) -> Unit {
                       auto const* equation = equation_of(kind, measure);
                       return equation == nullptr ? nullptr : &equation->unit;
                   },
                   [](MeanSdScale const&) -> Unit { return nullptr; },
                   [&](auto const& kind) -> Unit { return kind.table.unit(measure); }},
        scale);
}

}  // namespace asterism::norms
