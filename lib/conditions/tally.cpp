// SPDX-License-Identifier: MIT
#include <cmath>

#include <fmt/format.h>

#include "base/number.h"
#include "conditions/read.h"
#include "yaml/table.h"

namespace asterism {

namespace {

class Tally final : public Condition {
public:
    Tally(Span span, TallyId tally, Tenths threshold, bool at_most)
        : Condition(std::move(span)), tally_(tally), threshold_(threshold), at_most_(at_most) {}

    std::string_view kind() const override { return "tally"; }
    Leaf leaf() const override { return {Leaf::Kind::tally, tally_, threshold_, at_most_, false}; }
    Literal compile(Builder& builder, std::vector<Literal> const&) const override {
        // "at most n" is "not at least the next tenth".
        return at_most_ ? !builder.tally_at_least(tally_, threshold_ + 1)
                        : builder.tally_at_least(tally_, threshold_);
    }
    std::string describe(Vocabulary const& vocabulary) const override {
        return fmt::format("{} {} {}", at_most_ ? "at most" : "at least",
                           to_text(static_cast<double>(threshold_) / 10),
                           vocabulary.tallies[tally_]);
    }
    ConditionState state() const override { return TallyTest{tally_, threshold_, at_most_}; }

private:
    TallyId tally_;
    Tenths threshold_;
    bool at_most_;
};

struct Syntax {
    Word tally;
    std::optional<double> at_least;
    std::optional<double> at_most;
};

yaml::Table<Syntax> table() {
    yaml::Table<Syntax> table("condition");
    table.required("tally", &Syntax::tally, yaml::word("tally"), "the tally, by id")
        .optional("at-least", &Syntax::at_least, yaml::maybe(yaml::number()),
                  "reached from this number on")
        .optional("at-most", &Syntax::at_most, yaml::maybe(yaml::number()),
                  "reached up to this number");
    return table;
}

}  // namespace

ConditionPtr read_tally(yaml::Node const& node, ReadContext const& context) {
    Syntax syntax;
    table().read(node, syntax, context.diagnostics);
    TallyId tally = 0;
    auto const no_label = [](std::uint32_t) { return std::string(); };
    if (syntax.tally.empty() ||
        !resolve_word(context.tallies, syntax.tally, "tally", no_label, tally, context.diagnostics))
        return nullptr;
    if (syntax.at_least.has_value() == syntax.at_most.has_value()) {
        context.diagnostics.error("one-bound", node.span,
                                  "a tally needs exactly one of `at-least` and `at-most`");
        return nullptr;
    }
    double const bound = syntax.at_least ? *syntax.at_least : *syntax.at_most;
    auto const tenths = static_cast<Tenths>(std::llround(bound * 10));
    if (bound < 0 || (syntax.at_least && tenths < 1)) {
        context.diagnostics.error("always-true", node.span, "every case reaches this number");
        return nullptr;
    }
    return std::make_shared<Tally const>(node.span, tally, tenths, syntax.at_most.has_value());
}

ConditionPtr restore_tally(ConditionParts parts) {
    auto const test = std::get<TallyTest>(parts.state);
    return std::make_shared<Tally const>(std::move(parts.span), test.tally, test.threshold,
                                         test.at_most);
}

yaml::Shape tally_shape() { return table().shape(); }

}  // namespace asterism
