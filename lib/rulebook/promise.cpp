// SPDX-License-Identifier: MIT
#include "rulebook/promise.h"

#include "rulebook/vocabulary.h"

namespace asterism {

namespace {

enum class Keeps { urgency, services };

struct OutcomeSyntax {
    std::vector<Word> suggest, never;
    std::optional<Urgency> at_least;
    yaml::Node holds, never_met;
    std::optional<Keeps> keeps;
};

yaml::Table<OutcomeSyntax> outcome_table() {
    auto const services = yaml::one_or_more(yaml::word("service"));
    auto const keeps =
        yaml::choice<Keeps>({{"urgency", Keeps::urgency}, {"services", Keeps::services}});
    yaml::Table<OutcomeSyntax> table("outcome of a promise");
    table
        .optional("suggest", &OutcomeSyntax::suggest, services,
                  "one of these services is suggested; `any` for some service")
        .optional("never", &OutcomeSyntax::never, services,
                  "none of these is suggested; `any` for no service at all")
        .optional("at-least", &OutcomeSyntax::at_least, yaml::maybe(urgency_reader()),
                  "at this urgency or sooner; default routine")
        .optional("holds", &OutcomeSyntax::holds, yaml::raw("condition"), "a condition that is met")
        .optional("never-met", &OutcomeSyntax::never_met, yaml::raw("condition"),
                  "a condition that is never known to be met")
        .optional("keeps", &OutcomeSyntax::keeps, yaml::maybe(keeps),
                  "what does not fall when the finding is added");
    return table;
}

void check(OutcomeSyntax const& syntax, yaml::Node const& node, Diagnostics& diagnostics) {
    int const said = (node.find("suggest") ? 1 : 0) + (node.find("never") ? 1 : 0) +
                     (node.find("holds") ? 1 : 0) + (node.find("never-met") ? 1 : 0) +
                     (node.find("keeps") ? 1 : 0);
    if (said != 1) {
        diagnostics.error("one-of", node.span,
                          "an outcome has exactly one of `suggest`, `never`, `holds`, `never-met`, "
                          "`keeps`");
    }
    if (syntax.at_least && syntax.suggest.empty() && syntax.never.empty()) {
        diagnostics.error("needless-key", node.find("at-least")->span,
                          "`at-least` goes with `suggest` or `never`");
    }
}

yaml::Reader<PromiseOutcome> outcome_reader() {
    auto const table = outcome_table();
    return {table.shape(),
            [table](yaml::Node const& node, PromiseOutcome& target, Diagnostics& diagnostics) {
                OutcomeSyntax syntax;
                table.read(node, syntax, diagnostics);
                if (node.is_map()) check(syntax, node, diagnostics);
                target = {std::move(syntax.suggest),
                          std::move(syntax.never),
                          syntax.at_least,
                          std::move(syntax.holds),
                          std::move(syntax.never_met),
                          syntax.keeps == Keeps::urgency,
                          syntax.keeps == Keeps::services,
                          node.span};
            }};
}

}  // namespace

yaml::Table<PromiseSyntax> promise_table() {
    yaml::Table<PromiseSyntax> table("promise");
    table.required("promise", &PromiseSyntax::id, yaml::word(), "id, in plain words")
        .optional("when", &PromiseSyntax::when, yaml::raw("condition"),
                  "the babies it speaks of; every baby when left out")
        .optional("for-each", &PromiseSyntax::for_each, yaml::maybe(finding_class_reader()),
                  "one promise for each finding of this class, which is present")
        .optional("adding", &PromiseSyntax::adding, yaml::maybe(finding_class_reader()),
                  "the answers before and after any finding of this class is added")
        .optional("except", &PromiseSyntax::except, yaml::one_or_more(yaml::word("finding")),
                  "findings of the class that it does not speak of")
        .optional("alone", &PromiseSyntax::alone, yaml::boolean(),
                  "nothing else is known to be present")
        .optional("familial", &PromiseSyntax::familial, yaml::boolean(),
                  "the finding runs in the family")
        .required("then", &PromiseSyntax::then, yaml::one_or_more(outcome_reader()),
                  "what must hold for each of these babies")
        .required("because", &PromiseSyntax::because, yaml::text(), "why it matters")
        .required("sources", &PromiseSyntax::sources, yaml::one_or_more(yaml::word("source")),
                  "ids of the bibliography, or `common-practice`");
    return table;
}

}  // namespace asterism
