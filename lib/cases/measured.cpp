// SPDX-License-Identifier: MIT
#include "cases/measured.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/number.h"
#include "base/quantity.h"
#include "yaml/reader.h"

namespace asterism {

namespace {

/// Conversion leaves the last bits of a double astray; cut-offs are compared strictly.
double without_noise(double value) {
    constexpr double nine_decimals = 1e9;
    return std::round(value * nine_decimals) / nine_decimals;
}

bool plausible(Measure const& measure, double value) {
    return value >= measure.plausible.from && value <= measure.plausible.to;
}

/// "did you mean `335 mm`", when another accepted unit would make the number plausible.
std::string other_unit(Measure const& measure, Quantity const& quantity) {
    for (auto const& unit : measure.units) {
        auto const factor = conversion(unit, measure.unit);
        if (unit != quantity.unit && factor && plausible(measure, quantity.value * *factor)) {
            return fmt::format("did you mean `{} {}`", to_text(quantity.value), unit);
        }
    }
    return {};
}

std::string range_text(Measure const& measure) {
    return fmt::format("{} to {} {}", to_text(measure.plausible.from),
                       to_text(measure.plausible.to), measure.unit);
}

bool check_unit(Measure const& measure, Quantity const& quantity, Word const& value,
                Diagnostics& diagnostics) {
    bool const known =
        std::find(measure.units.begin(), measure.units.end(), quantity.unit) != measure.units.end();
    if (known || (quantity.unit == "lb" && conversion("lb", measure.unit))) return true;
    auto const accepted = fmt::format("accepted: {}", fmt::join(measure.units, ", "));
    auto const message = quantity.unit.empty() ? fmt::format("`{}` has no unit", value.text)
                                               : fmt::format("unknown unit `{}` for {}",
                                                             quantity.unit, measure.label);
    diagnostics.error("bad-unit", value.span, message, accepted);
    return false;
}

}  // namespace

std::optional<MeasuredValue> read_measure(Word const& name, Word const& value,
                                          Ontology const& ontology, Diagnostics& diagnostics) {
    MeasuredValue result;
    auto const label = [&](MeasureId id) { return ontology.measures[id].label; };
    if (!resolve_word(ontology.measure_names, name, "measure", label, result.measure, diagnostics))
        return std::nullopt;
    auto const& measure = ontology.measures[result.measure];
    auto const quantity = parse_quantity(value.text);
    if (!quantity) {
        diagnostics.error("bad-number", value.span,
                          fmt::format("`{}` is not understood: {}", value.text, quantity.error()));
        return std::nullopt;
    }
    if (!check_unit(measure, *quantity, value, diagnostics)) return std::nullopt;
    double const factor = *conversion(quantity->unit, measure.unit);
    result.value = without_noise(quantity->value * factor);
    result.step = quantity->step * factor;
    result.as_written = value;
    result.name_span = name.span;
    if (plausible(measure, result.value)) return result;
    diagnostics.error(
        "implausible", value.span,
        fmt::format("{} of `{}` is outside {}", measure.label, value.text, range_text(measure)),
        other_unit(measure, *quantity));
    return std::nullopt;
}

std::vector<MeasuredValue> read_measures(yaml::Node const& node, Ontology const& ontology,
                                         Diagnostics& diagnostics) {
    std::vector<MeasuredValue> result;
    if (node.kind == yaml::Kind::null) return result;
    if (!node.is_map()) {
        yaml::wrong_form(node, "a map of measure names and values", diagnostics);
        return result;
    }
    for (auto const& [key, value] : node.entries) {
        Word text;
        yaml::word().read(value, text, diagnostics);
        auto const measured =
            text.empty() ? std::nullopt : read_measure(key, text, ontology, diagnostics);
        if (!measured) continue;
        auto const twice = std::find_if(result.begin(), result.end(), [&](MeasuredValue const& m) {
            return m.measure == measured->measure;
        });
        if (twice != result.end()) {
            diagnostics.add({"measured-twice",
                             Severity::error,
                             fmt::format("`{}` is measured twice", key.text),
                             key.span,
                             {{twice->name_span, "the other value"}},
                             {}});
            continue;
        }
        result.push_back(*measured);
    }
    return result;
}

}  // namespace asterism
