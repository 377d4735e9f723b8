// SPDX-License-Identifier: MIT
#include <string>

#include "conditions/read.h"
#include "yaml/table.h"

namespace asterism {

namespace {

class IsSex final : public Condition {
public:
    IsSex(Span span, Sex sex) : Condition(std::move(span)), sex_(sex) {}
    std::string_view kind() const override { return "sex"; }
    Leaf leaf() const override { return {Leaf::Kind::sex, 0, 0, false, false}; }
    Literal compile(Builder& builder, std::vector<Literal> const&) const override {
        return builder.sex(sex_);
    }
    std::string describe(Vocabulary const&) const override {
        return "sex " + std::string(to_text(sex_));
    }
    ConditionState state() const override { return sex_; }

private:
    Sex sex_;
};

struct Syntax {
    Sex sex = Sex::not_given;
};

yaml::Table<Syntax> table() {
    yaml::Table<Syntax> table("condition");
    table.required("sex", &Syntax::sex,
                   yaml::choice<Sex>({{"female", Sex::female}, {"male", Sex::male}}),
                   "female or male");
    return table;
}

}  // namespace

ConditionPtr read_sex(yaml::Node const& node, ReadContext const& context) {
    Syntax syntax;
    table().read(node, syntax, context.diagnostics);
    return syntax.sex == Sex::not_given ? nullptr
                                        : std::make_shared<IsSex const>(node.span, syntax.sex);
}

ConditionPtr restore_sex(ConditionParts parts) {
    return std::make_shared<IsSex const>(std::move(parts.span), std::get<Sex>(parts.state));
}

yaml::Shape sex_shape() { return table().shape(); }

}  // namespace asterism
