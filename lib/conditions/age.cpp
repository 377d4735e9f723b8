// SPDX-License-Identifier: MIT
#include "conditions/within_range.h"

namespace asterism {

namespace {

constexpr RangeKind kind{"age", Leaf::Kind::age, duration_bounds, &Builder::age,
                         "age at the examination, such as { below: 24h }"};

}  // namespace

ConditionPtr read_age(yaml::Node const& node, ReadContext const& context) {
    return read_within_range(node, context, kind);
}
ConditionPtr restore_age(ConditionParts parts) {
    return std::make_shared<WithinRange const>(std::move(parts.span), kind,
                                               std::get<Range>(parts.state));
}

yaml::Shape age_shape() { return range_condition_table(kind).shape(); }

}  // namespace asterism
