// SPDX-License-Identifier: MIT
#include "cases/case_syntax.h"

#include "cases/examined.h"

namespace asterism {

namespace {

using yaml::choice;
using yaml::list_of;
using yaml::maybe;
using yaml::Table;
using yaml::word;

Table<StatementSyntax> statement_table() {
    Table<StatementSyntax> table("finding");
    table
        .required("finding", &StatementSyntax::finding, word("finding"),
                  "id, label, synonym or HPO id")
        .optional("side", &StatementSyntax::side,
                  maybe(choice<Sides>({{"left", Sides::left},
                                       {"right", Sides::right},
                                       {"both", Sides::both},
                                       {"bilateral", Sides::both}})),
                  "for a paired finding")
        .optional("grade", &StatementSyntax::grade, word(), "one of the finding's grades")
        .optional("familial", &StatementSyntax::familial, yaml::boolean(),
                  "a parent or sibling has it too");
    return table;
}

Table<DecisionsSyntax> decisions_table() {
    Table<DecisionsSyntax> table("decisions");
    table
        .optional("referred", &DecisionsSyntax::referred, list_of(word("service")),
                  "services referred to")
        .optional("on", &DecisionsSyntax::on, word(), "date of the decision");
    return table;
}

Table<CaseSyntax> make_case_table() {
    Table<CaseSyntax> table("case");
    auto const statements = list_of(statement_reader());
    table.optional("case", &CaseSyntax::id, word(), "a code that is not the patient's name")
        .optional("sex", &CaseSyntax::sex,
                  choice<Sex>({{"female", Sex::female},
                               {"male", Sex::male},
                               {"undetermined", Sex::undetermined}}),
                  "sex")
        .optional("gestation", &CaseSyntax::gestation, word(), "weeks and days, such as 38w4d")
        .optional("age", &CaseSyntax::age, word(), "age at the examination, such as 26h or 3d")
        .optional("born", &CaseSyntax::born, word(), "date of birth; gives follow-up dates")
        .optional("examined-on", &CaseSyntax::examined_on, word(), "date of the examination")
        .optional("examined", &CaseSyntax::examined, yaml::raw(examined_shape()),
                  "`all`, or steps and regions, and `except`")
        .optional("findings", &CaseSyntax::findings, statements, "what is present")
        .optional("absent", &CaseSyntax::absent, statements, "what was looked for and is not there")
        .optional("unsure", &CaseSyntax::unsure, statements,
                  "what could not be decided; counts as not examined")
        .optional("measures", &CaseSyntax::measures,
                  yaml::raw(yaml::either_shape(
                      {yaml::map_shape(word().shape, "measure"), yaml::nothing_shape()})),
                  "name: number and unit")
        .optional("history", &CaseSyntax::history,
                  yaml::raw(yaml::one_or_more(statement_reader()).shape),
                  "history items, or `none`")
        .optional("decisions", &CaseSyntax::decisions, maybe(decisions_table().reader()),
                  "what the clinician did");
    return table;
}

}  // namespace

yaml::Reader<StatementSyntax> statement_reader() {
    static Table<StatementSyntax> const table = statement_table();
    auto const whole = table.reader();
    yaml::Shape shape{
        yaml::Shape::Kind::either, {}, {}, {}, {word("finding").shape, whole.shape}, nullptr};
    return {std::move(shape),
            [](yaml::Node const& node, StatementSyntax& target, Diagnostics& diagnostics) {
                if (node.is_map()) {
                    table.read(node, target, diagnostics);
                    if (auto const* familial = node.find("familial"))
                        target.familial_span = familial->span;
                } else {
                    word().read(node, target.finding, diagnostics);
                }
            }};
}

yaml::Table<CaseSyntax> const& case_table() {
    static Table<CaseSyntax> const table = make_case_table();
    return table;
}

}  // namespace asterism
