// SPDX-License-Identifier: MIT
#include "conditions/group.h"

namespace asterism {

namespace {

class Any final : public Group {
public:
    using Group::Group;
    std::string_view kind() const override { return "any"; }
    Literal compile(Builder& builder, std::vector<Literal> const& children) const override {
        return builder.any(children);
    }
    std::string describe(Vocabulary const& vocabulary) const override {
        return joined(vocabulary, "or");
    }
};

}  // namespace

ConditionPtr read_any(yaml::Node const& node, ReadContext const& context) {
    return read_group<Any>(node, context, "any");
}
ConditionPtr restore_any(ConditionParts parts) {
    return std::make_shared<Any const>(std::move(parts.span), std::move(parts.children));
}

yaml::Shape any_shape() { return group_table("any").shape(); }

}  // namespace asterism
