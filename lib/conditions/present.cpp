// SPDX-License-Identifier: MIT
#include "conditions/finding_syntax.h"

namespace asterism {

namespace {

class Present final : public Condition {
public:
    Present(Span span, FindingTest test) : Condition(std::move(span)), test_(std::move(test)) {}
    std::string_view kind() const override { return "present"; }
    Leaf leaf() const override { return {Leaf::Kind::finding, test_.finding, 0, false, false}; }
    Literal compile(Builder& builder, std::vector<Literal> const&) const override {
        return test_.compile(builder);
    }
    std::string describe(Vocabulary const& vocabulary) const override {
        return test_.describe(vocabulary);
    }
    ConditionState state() const override { return test_; }

private:
    FindingTest test_;
};

}  // namespace

ConditionPtr read_present(yaml::Node const& node, ReadContext const& context) {
    auto test = read_finding_test(node, context, "present");
    return test ? std::make_shared<Present const>(node.span, std::move(*test)) : nullptr;
}

ConditionPtr restore_present(ConditionParts parts) {
    return std::make_shared<Present const>(std::move(parts.span),
                                           std::get<FindingTest>(std::move(parts.state)));
}

yaml::Shape present_shape() { return finding_test_table("present").shape(); }

}  // namespace asterism
