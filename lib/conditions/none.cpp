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
yaml::Shape none_shape() { return group_table("none").shape(); }

}  // namespace asterism
