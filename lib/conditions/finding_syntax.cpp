// SPDX-License-Identifier: MIT
#include "conditions/finding_syntax.h"

#include <algorithm>

#include <fmt/format.h>

namespace asterism {

namespace {

std::string_view side_text(SideWanted side) {
    switch (side) {
        case SideWanted::left: return "on the left";
        case SideWanted::right: return "on the right";
        case SideWanted::both: return "on both sides";
        case SideWanted::one: return "on one side only";
    }
    return "";
}

bool read_grades(std::vector<Word> const& words, Finding const& finding, FindingTest& test,
                 Diagnostics& diagnostics) {
    std::vector<std::string> known;
    for (auto const& grade : finding.grades) known.push_back(grade.text);
    for (auto const& word : words) {
        auto const found = std::find(known.begin(), known.end(), word.text);
        if (found == known.end()) {
            yaml::unknown_word(word, "grade", known, diagnostics);
            return false;
        }
        test.grades.push_back(static_cast<std::uint32_t>(found - known.begin()));
    }
    return true;
}

bool check_side(FindingTestSyntax const& syntax, Finding const& finding, Diagnostics& diagnostics) {
    if (!syntax.side || finding.laterality == Laterality::paired) return true;
    diagnostics.error("no-sides", syntax.finding.span,
                      fmt::format("`{}` has no left and right", finding.id.text));
    return false;
}

}  // namespace

Literal FindingTest::compile(Builder& builder) const {
    std::vector<Literal> parts;
    if (side) parts.push_back(builder.on_side(finding, *side));
    if (!grades.empty()) {
        std::vector<Literal> any;
        for (auto const grade : grades) any.push_back(builder.graded(finding, grade));
        parts.push_back(builder.any(any));
    }
    return parts.empty() ? builder.present(finding) : builder.all(parts);
}

std::string FindingTest::describe(Vocabulary const& vocabulary) const {
    auto const& known = vocabulary.ontology.at(finding);
    std::string text = known.label;
    if (side) text += fmt::format(" {}", side_text(*side));
    std::vector<std::string> names;
    for (auto const grade : grades) names.push_back(known.grades[grade].text);
    if (!names.empty()) text += fmt::format(" ({})", list_in_words(names, "or"));
    return text;
}

yaml::Table<FindingTestSyntax> finding_test_table(std::string keyword) {
    yaml::Table<FindingTestSyntax> table("condition");
    auto const side = yaml::choice<SideWanted>({{"left", SideWanted::left},
                                                {"right", SideWanted::right},
                                                {"both", SideWanted::both},
                                                {"one", SideWanted::one}});
    table
        .required(std::move(keyword), &FindingTestSyntax::finding, yaml::word("finding"),
                  "the finding, by id")
        .optional("side", &FindingTestSyntax::side, yaml::maybe(side),
                  "left, right, both, or one only")
        .optional("grade", &FindingTestSyntax::grades, yaml::one_or_more(yaml::word()),
                  "one of these grades");
    return table;
}

std::optional<FindingTest> read_finding_test(yaml::Node const& node, ReadContext const& context,
                                             std::string keyword) {
    FindingTestSyntax syntax;
    finding_test_table(std::move(keyword)).read(node, syntax, context.diagnostics);
    FindingTest test;
    if (syntax.finding.empty() || !read_finding(syntax.finding, context, test.finding))
        return std::nullopt;
    auto const& finding = context.ontology.at(test.finding);
    if (!check_side(syntax, finding, context.diagnostics)) return std::nullopt;
    if (!read_grades(syntax.grades, finding, test, context.diagnostics)) return std::nullopt;
    test.side = syntax.side;
    return test;
}

}  // namespace asterism
