// SPDX-License-Identifier: MIT
#pragma once

#include <string>

#include "conditions/read.h"
#include "yaml/table.h"

namespace asterism {

/// What tells one number of the case from another: its name, its notation, and how the builder asks
/// for it.
struct RangeKind {
    std::string_view keyword;
    Leaf::Kind leaf;
    BoundSyntax (*bounds)();
    Literal (Builder::*ask)(Range const&);
    std::string_view doc;
};

/// A condition on one number of the case, such as its age.
class WithinRange final : public Condition {
public:
    WithinRange(Span span, RangeKind const& kind, Range range)
        : Condition(std::move(span)), kind_(kind), range_(range) {}
    std::string_view kind() const override { return kind_.keyword; }
    Leaf leaf() const override { return {kind_.leaf, 0, 0, false, false}; }
    Literal compile(Builder& builder, std::vector<Literal> const&) const override {
        return (builder.*kind_.ask)(range_);
    }
    std::string describe(Vocabulary const&) const override {
        return std::string(kind_.keyword) + " " + asterism::describe(range_, kind_.bounds());
    }
    ConditionState state() const override { return range_; }

private:
    RangeKind const& kind_;
    Range range_;
};

struct RangeConditionSyntax {
    yaml::Node bounds;
};

inline yaml::Table<RangeConditionSyntax> range_condition_table(RangeKind const& kind) {
    yaml::Table<RangeConditionSyntax> table("condition");
    table.required(std::string(kind.keyword), &RangeConditionSyntax::bounds,
                   yaml::raw(range_shape()), std::string(kind.doc));
    return table;
}

inline ConditionPtr read_within_range(yaml::Node const& node, ReadContext const& context,
                                      RangeKind const& kind) {
    RangeConditionSyntax syntax;
    range_condition_table(kind).read(node, syntax, context.diagnostics);
    Range range;
    bool const fine = read_range(syntax.bounds, kind.bounds(), range, context.diagnostics);
    return fine ? std::make_shared<WithinRange const>(node.span, kind, range) : nullptr;
}

}  // namespace asterism
