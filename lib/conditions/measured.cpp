// SPDX-License-Identifier: MIT
#include <algorithm>

#include <fmt/format.h>

#include "base/quantity.h"
#include "conditions/range.h"
#include "conditions/read.h"
#include "yaml/table.h"

namespace asterism {

namespace {

class Measured final : public Condition {
public:
    Measured(Span span, MeasureTest test) : Condition(std::move(span)), test_(std::move(test)) {}
    std::string_view kind() const override { return "measured"; }
    Leaf leaf() const override { return {Leaf::Kind::measure, test_.measure, 0, false, false}; }
    Literal compile(Builder& builder, std::vector<Literal> const&) const override {
        return builder.measured(test_);
    }
    std::string describe(Vocabulary const& vocabulary) const override {
        auto const& measure = vocabulary.ontology.measures[test_.measure];
        auto const range = asterism::describe(test_.range, number_bounds());
        auto const by = test_.norm.empty() ? "" : " by " + test_.norm;
        if (test_.statistic == Statistic::z)
            return fmt::format("{} {} SD{}", measure.label, range, by);
        if (test_.statistic == Statistic::centile)
            return fmt::format("{} {} on the centiles{}", measure.label, range, by);
        return fmt::format("{} {} {}", measure.label, range, measure.unit);
    }
    ConditionState state() const override { return test_; }

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

/// The key of the bounds: the only one that is neither the measure nor the norm.
yaml::Entry const* bounds_entry(yaml::Node const& node, Diagnostics& diagnostics) {
    yaml::Entry const* found = nullptr;
    std::size_t others = 0;
    for (auto const& entry : node.entries) {
        if (entry.key.text == "measured" || entry.key.text == "norm") continue;
        found = &entry;
        ++others;
    }
    if (others == 1) return found;
    diagnostics.error("one-bound", node.span,
                      "a measure needs exactly one of `z`, `centile` or a unit, with bounds");
    return nullptr;
}

/// `norm: id`, which only z and centile can have.
bool read_norm(yaml::Node const& node, ReadContext const& context, MeasureTest& test) {
    auto const* norm = node.find("norm");
    if (!norm) return true;
    Word name;
    yaml::word("norm").read(*norm, name, context.diagnostics);
    if (name.empty()) return false;
    if (test.statistic == Statistic::value) {
        context.diagnostics.error("needless-norm", name.span,
                                  "`norm` goes with `z` or `centile`, not with a unit");
        return false;
    }
    test.norm = name.text;
    auto const& names = context.ontology.norm_names;
    auto const& ids = names.printed();
    if (std::find(ids.begin(), ids.end(), name.text) != ids.end()) return true;
    report_unresolved(name, "norm", {{}, names.resolve(name.text).nearest}, {},
                      context.diagnostics);
    return false;
}

}  // namespace

ConditionPtr read_measured(yaml::Node const& node, ReadContext const& context) {
    MeasureTest test;
    Word name;
    yaml::word("measure").read(*node.find("measured"), name, context.diagnostics);
    if (name.empty() || !resolve_measure(name, context, test)) return nullptr;
    auto const* entry = bounds_entry(node, context.diagnostics);
    if (!entry) return nullptr;
    auto const factor =
        statistic(entry->key, context.ontology.measures[test.measure], test, context.diagnostics);
    if (!factor || !read_range(entry->value, number_bounds(), test.range, context.diagnostics))
        return nullptr;
    if (!read_norm(node, context, test)) return nullptr;
    test.range.low *= *factor;
    test.range.high *= *factor;
    return std::make_shared<Measured const>(node.span, std::move(test));
}

ConditionPtr restore_measured(ConditionParts parts) {
    return std::make_shared<Measured const>(std::move(parts.span),
                                            std::get<MeasureTest>(std::move(parts.state)));
}

yaml::Shape measured_shape() {
    yaml::Shape shape{yaml::Shape::Kind::record, "measured", {}, {}, {}, nullptr};
    shape.fields.push_back({"measured", true, "the measure, by id", yaml::word("measure").shape});
    shape.fields.push_back(
        {"norm", false, "whose z or centile; default the preferred", yaml::word("norm").shape});
    for (auto const* key : {"z", "centile"})
        shape.fields.push_back({key, false, "bounds", range_shape()});
    shape.item = std::make_shared<yaml::Shape const>(range_shape());  // under a unit
    return shape;
}

}  // namespace asterism
