// SPDX-License-Identifier: MIT
#include "conditions/within_range.h"

namespace asterism {

namespace {

constexpr RangeKind kind{"gestation", Leaf::Kind::gestation, gestation_bounds, &Builder::gestation,
                         "gestation at birth, such as { below: 37w0d }"};

}  // namespace

ConditionPtr read_gestation(yaml::Node const& node, ReadContext const& context) {
    return read_within_range(node, context, kind);
}
ConditionPtr restore_gestation(ConditionParts parts) {
    return std::make_shared<WithinRange const>(std::move(parts.span), kind,
                                               std::get<Range>(parts.state));
}

yaml::Shape gestation_shape() { return range_condition_table(kind).shape(); }

}  // namespace asterism
