// SPDX-License-Identifier: MIT
#include "cases/read_case.h"

#include <algorithm>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "base/nearest.h"
#include "cases/case_syntax.h"
#include "cases/contradictions.h"
#include "cases/examined.h"
#include "cases/measured.h"
#include "yaml/read.h"

namespace asterism {

namespace {

template <class T, class Parse>
std::optional<T> parsed(Word const& word, std::string_view code, Parse parse,
                        Diagnostics& diagnostics) {
    if (word.empty()) return std::nullopt;
    auto const value = parse(word.text);
    if (value) return *value;
    diagnostics.error(code, word.span,
                      fmt::format("`{}` is not understood: {}", word.text, value.error()));
    return std::nullopt;
}

/// Resolves the statements of one list, keeping those whose name is known.
class Statements {
public:
    Statements(Ontology const& ontology, Diagnostics& diagnostics)
        : ontology_(ontology), diagnostics_(diagnostics) {}

    std::vector<Statement> read(std::vector<StatementSyntax> const& list,
                                bool may_be_familial) const {
        std::vector<Statement> result;
        for (auto const& syntax : list) {
            Statement statement;
            if (syntax.finding.empty() || !resolve(syntax.finding, statement.finding)) continue;
            statement.as_written = syntax.finding;
            if (syntax.side) read_side(syntax, statement);
            if (!syntax.grade.empty()) read_grade(syntax.grade, statement);
            read_familial(syntax, may_be_familial, statement);
            result.push_back(std::move(statement));
        }
        return result;
    }

    bool resolve(Word const& word, FindingId& target) const {
        auto const label = [&](FindingId id) { return ontology_.at(id).label; };
        return resolve_word(ontology_.finding_names, word, "finding", label, target, diagnostics_);
    }

private:
    void read_side(StatementSyntax const& syntax, Statement& statement) const {
        if (ontology_.at(statement.finding).laterality == Laterality::paired) {
            statement.sides = *syntax.side;
            return;
        }
        diagnostics_.error("no-sides", syntax.finding.span,
                           fmt::format("`{}` has no left and right", syntax.finding.text));
    }

    void read_grade(Word const& grade, Statement& statement) const {
        auto const& grades = ontology_.at(statement.finding).grades;
        auto const found = std::find_if(grades.begin(), grades.end(),
                                        [&](Word const& g) { return g.text == grade.text; });
        if (found != grades.end()) {
            statement.grade = static_cast<std::uint32_t>(found - grades.begin());
            return;
        }
        std::vector<std::string> names;
        for (auto const& known : grades) names.push_back(known.text);
        unknown_grade(grade, names);
    }

    /// After a semicolon a side, a grade and `familial` are written alike, so all of them are near.
    void unknown_grade(Word const& grade, std::vector<std::string> const& grades) const {
        auto near = grades;
        near.insert(near.end(), {"left", "right", "both", "familial"});
        auto help = did_you_mean(grade.text, near);
        if (help.empty())
            help = grades.empty() ? "this finding has no grades"
                                  : fmt::format("accepted: {}", fmt::join(grades, ", "));
        diagnostics_.error("unknown-grade", grade.span,
                           fmt::format("unknown grade `{}`", grade.text), help);
    }

    void read_familial(StatementSyntax const& syntax, bool may_be_familial,
                       Statement& statement) const {
        if (syntax.familial && !may_be_familial) {
            diagnostics_.error("familial-not-present", syntax.familial_span,
                               "only a present finding can be familial");
            return;
        }
        statement.familial = syntax.familial;
    }

    Ontology const& ontology_;
    Diagnostics& diagnostics_;
};

/// `none`, or a list of history items (each a name or a map).
void read_history(yaml::Node const& node, Ontology const& ontology, Case& result,
                  Diagnostics& diagnostics) {
    if (node.kind == yaml::Kind::null && !node.span.known()) return;
    if (node.is_scalar() && node.text == "none") {
        result.history_none = true;
        return;
    }
    std::vector<StatementSyntax> items;
    yaml::one_or_more(statement_reader()).read(node, items, diagnostics);
    for (auto& statement : Statements(ontology, diagnostics).read(items, false)) {
        if (!ontology.region_of(statement.finding).history) {
            diagnostics.error(
                "not-history", statement.as_written.span,
                fmt::format("`{}` is seen at the examination, not told", statement.as_written.text),
                "write it under `findings`");
        }
        result.present.push_back(std::move(statement));
    }
}

/// `38w4d` is how a gestation is written; as an age it is nine months.
void point_at_gestation(Word const& age, std::optional<Duration> const& read,
                        Diagnostics& diagnostics) {
    constexpr int least_viable_hours = 22 * 7 * 24;
    bool const in_weeks = age.text.find('w') != std::string::npos;
    if (!read || !in_weeks || read->hours < least_viable_hours) return;
    diagnostics.warning("age-like-gestation", age.span,
                        fmt::format("`{}` is read as the age since birth", age.text),
                        "the age at birth is written under `gestation`");
}

void read_facts(CaseSyntax const& syntax, Case& result, Diagnostics& diagnostics) {
    result.id = syntax.id;
    result.sex = syntax.sex;
    result.gestation =
        parsed<Gestation>(syntax.gestation, "bad-gestation", parse_gestation, diagnostics);
    result.age = parsed<Duration>(syntax.age, "bad-age", parse_duration, diagnostics);
    point_at_gestation(syntax.age, result.age, diagnostics);
    result.born = parsed<Date>(syntax.born, "bad-date", parse_date, diagnostics);
    result.examined_on = parsed<Date>(syntax.examined_on, "bad-date", parse_date, diagnostics);
    if (result.born && result.examined_on && *result.examined_on < *result.born) {
        diagnostics.add({"dates-reversed",
                         Severity::error,
                         "the examination is dated before the birth",
                         syntax.examined_on.span,
                         {{syntax.born.span, "the date of birth"}},
                         {}});
    }
}

void read_decisions(CaseSyntax const& syntax, Case& result, Diagnostics& diagnostics) {
    if (!syntax.decisions) return;
    result.decisions =
        Decisions{syntax.decisions->referred,
                  parsed<Date>(syntax.decisions->on, "bad-date", parse_date, diagnostics)};
}

}  // namespace

Case read_case(yaml::Node const& node, Ontology const& ontology, Diagnostics& diagnostics) {
    CaseSyntax syntax;
    case_table().read(node, syntax, diagnostics);
    Case result;
    result.step_done.assign(ontology.steps.size(), false);
    read_facts(syntax, result, diagnostics);
    read_examined(syntax.examined, ontology, result.step_done, diagnostics);
    Statements const statements(ontology, diagnostics);
    result.present = statements.read(syntax.findings, true);
    result.absent = statements.read(syntax.absent, false);
    result.unsure = statements.read(syntax.unsure, false);
    read_history(syntax.history, ontology, result, diagnostics);
    result.measures = read_measures(syntax.measures, ontology, diagnostics);
    read_decisions(syntax, result, diagnostics);
    check_contradictions(result, ontology, diagnostics);
    return result;
}

Case read_case(SourcePtr const& source, Ontology const& ontology, Diagnostics& diagnostics) {
    auto const node = yaml::read_any(source, diagnostics);
    return node ? read_case(*node, ontology, diagnostics) : empty_case(ontology);
}

}  // namespace asterism
