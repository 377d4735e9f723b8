// SPDX-License-Identifier: MIT
#include "conditions/finding_syntax.h"

namespace asterism {

namespace {

class Absent final : public Condition {
public:
    Absent(Span span, FindingTest test) : Condition(std::move(span)), test_(std::move(test)) {}
    std::string_view kind() const override { return "absent"; }
    Leaf leaf() const override { return {Leaf::Kind::finding, test_.finding, 0, false, true}; }
    Literal compile(Builder& builder, std::vector<Literal> const&) const override {
        return !test_.compile(builder);
    }
    std::string describe(Vocabulary const& vocabulary) const override {
        return test_.describe(vocabulary) + " absent";
    }
    ConditionState state() const override { return test_; }

private:
    FindingTest test_;
};

}  // namespace

ConditionPtr read_absent(yaml::Node const& node, ReadContext const& context) {
    auto test = read_finding_test(node, context, "absent");
    return test ? std::make_shared<Absent const>(node.span, std::move(*test)) : nullptr;
}

ConditionPtr restore_absent(ConditionParts parts) {
    return std::make_shared<Absent const>(std::move(parts.span),
                                          std::get<FindingTest>(std::move(parts.state)));
}

yaml::Shape absent_shape() { return finding_test_table("absent").shape(); }

}  // namespace asterism
