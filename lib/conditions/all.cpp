// SPDX-License-Identifier: MIT
#include "conditions/group.h"

namespace asterism {

namespace {

class All final : public Group {
public:
    using Group::Group;
    std::string_view kind() const override { return "all"; }
    Literal compile(Builder& builder, std::vector<Literal> const& children) const override {
        return builder.all(children);
    }
    std::string describe(Vocabulary const& vocabulary) const override {
        return joined(vocabulary, "and");
    }
};

}  // namespace

ConditionPtr read_all(yaml::Node const& node, ReadContext const& context) {
    return read_group<All>(node, context, "all");
}
ConditionPtr restore_all(ConditionParts parts) {
    return std::make_shared<All const>(std::move(parts.span), std::move(parts.children));
}

yaml::Shape all_shape() { return group_table("all").shape(); }

}  // namespace asterism
