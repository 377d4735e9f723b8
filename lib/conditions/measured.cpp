// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include "base/quantity.h"
#include "conditions/read.h"
#include "yaml/table.h"

namespace asterism {

namespace {

class Measured final : public Condition {
public:
    Measured(Span span, MeasureTest test) : Condition(std::move(span)), test_(test) {}
    std::string_view kind() const override { return "measured"; }
    Leaf leaf() const override { return {Leaf::Kind::measure, test_.measure, 0, false, false}; }
    Literal compile(Builder& builder, std::vector<Literal> const&) const override {
        return builder.measured(test_);
    }
    std::string describe(Vocabulary const& vocabulary) const override {
        auto const& measure = vocabulary.ontology.measures[test_.measure];
        auto const range = asterism::describe(test_.range, number_bounds());
        if (test_.statistic == Statistic::z) return fmt::format("{} {} SD", measure.label, range);
        if (test_.statistic == Statistic::centile)
            return fmt::format("{} {} on the centiles", measure.label, range);
        return fmt::format("{} {} {}", measure.label, range, measure.unit);
    }

private:
    MeasureTest test_;
};

bool resolve_measure(Word const& word, ReadContext const& context, MeasureTest& test) {
    if (auto const known = context.ontology.measure(word.text)) {
        test.measure = *known;
        return true;
    }
    report_unresolved(word, "measure",
                      {{}, context.ontology.measure_names.resolve(word.text).nearest}, {},
                      context.diagnostics);
    return false;
}

/// `z`, `centile`, or a unit that converts to the measure's own.
std::optional<double> statistic(Word const& key, Measure const& measure, MeasureTest& test,
                                Diagnostics& diagnostics) {
    if (key.text == "z" || key.text == "centile") {
        test.statistic = key.text == "z" ? Statistic::z : Statistic::centile;
        return 1;
    }
    auto const factor = conversion(key.text, measure.unit);
    if (!factor) {
        diagnostics.error(
            "bad-unit", key.span,
            fmt::format("`{}` is neither z, centile nor a unit of {}", key.text, measure.label),
            fmt::format("accepted: z, centile, {}", fmt::join(measure.units, ", ")));
    }
    return factor;
}

}  // namespace

ConditionPtr read_measured(yaml::Node const& node, ReadContext const& context) {
    MeasureTest test;
    Word name;
    yaml::word("measure").read(*node.find("measured"), name, context.diagnostics);
    if (name.empty() || !resolve_measure(name, context, test)) return nullptr;
    if (node.entries.size() != 2) {
        context.diagnostics.error(
            "one-bound", node.span,
            "a measure needs exactly one of `z`, `centile` or a unit, with bounds");
        return nullptr;
    }
    auto const& entry = node.entries[node.entries[0].key.text == "measured" ? 1 : 0];
    auto const factor =
        statistic(entry.key, context.ontology.measures[test.measure], test, context.diagnostics);
    if (!factor || !read_range(entry.value, number_bounds(), test.range, context.diagnostics))
        return nullptr;
    test.range.low *= *factor;
    test.range.high *= *factor;
    return std::make_shared<Measured const>(node.span, test);
}

yaml::Shape measured_shape() {
    yaml::Shape shape{yaml::Shape::Kind::record, "measured", {}, {}, {}, nullptr};
    shape.fields.push_back({"measured", true, "the measure, by id", yaml::word("measure").shape});
    for (auto const* key :
         {"z", "centile", "mm", "cm", "g", "kg", "/min", "%", "mmHg", "ratio", "degrees"}) {
        shape.fields.push_back({key, false, "bounds", yaml::raw("bounds").shape});
    }
    return shape;
}

}  // namespace asterism
