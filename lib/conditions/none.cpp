// SPDX-License-Identifier: MIT
#include "conditions/group.h"

namespace asterism {

namespace {

class None final : public Group {
public:
    using Group::Group;
    std::string_view kind() const override { return "none"; }
    bool negates() const override { return true; }
    Literal compile(Builder& builder, std::vector<Literal> const& children) const override {
        return !builder.any(children);
    }
    std::string describe(Vocabulary const& vocabulary) const override {
        return "none of " + joined(vocabulary, "or");
    }
};

}  // namespace

ConditionPtr read_none(yaml::Node const& node, ReadContext const& context) {
    return read_group<None>(node, context, "none");
}
ConditionPtr restore_none(ConditionParts parts) {
    return std::make_shared<None const>(std::move(parts.span), std::move(parts.children));
}

yaml::Shape none_shape() { return group_table("none").shape(); }

}  // namespace asterism
