// SPDX-License-Identifier: MIT
#include "cases/term_statements.h"

#include <algorithm>

#include <fmt/format.h>

namespace asterism {

namespace {

bool sides_apart(Statement const& a, Statement const& b) {
    bool const both_said = a.sides != Sides::not_said && b.sides != Sides::not_said;
    return both_said && (static_cast<int>(a.sides) & static_cast<int>(b.sides)) == 0;
}

/// HPO says `Severe` where examiners say `marked`.
std::string grade_word(std::string const& severity) {
    return severity == "severe" ? "marked" : severity;
}

}  // namespace

std::string quoted_term(MappedTerm const& term) {
    if (term.label.empty()) return term.id.text;
    if (term.id.empty()) return term.label;
    return fmt::format("{} ({})", term.id.text, term.label);
}

void TermStatements::take_grade(std::string const& severity, MappedTerm const& term,
                                Statement& statement) {
    auto const& grades = ontology_.at(statement.finding).grades;
    auto const found = std::find_if(grades.begin(), grades.end(), [&](Word const& grade) {
        return grade.text == severity || grade.text == grade_word(severity);
    });
    if (found != grades.end()) {
        statement.grade = static_cast<std::uint32_t>(found - grades.begin());
        return;
    }
    result_.left_out.push_back(
        {fmt::format("severity `{}` of {}", severity, quoted_term(term)),
         fmt::format("`{}` has no such grade", ontology_.at(statement.finding).label),
         term.id.span});
}

Statement TermStatements::statement(MappedTerm const& term, FindingId finding, Sides sides,
                                    std::string const& severity) {
    Statement result;
    result.finding = finding;
    result.as_written = {quoted_term(term), term.id.span};
    if (sides != Sides::not_said) {
        if (ontology_.at(finding).laterality == Laterality::paired)
            result.sides = sides;
        else
            result_.left_out.push_back(
                {fmt::format("the side of {}", quoted_term(term)),
                 fmt::format("`{}` has no left and right", ontology_.at(finding).label),
                 term.id.span});
    }
    if (!severity.empty()) take_grade(severity, term, result);
    return result;
}

void TermStatements::add(MappedTerm term, Sides sides, std::string const& severity) {
    auto& baby = result_.baby;
    for (auto const finding : term.findings) {
        if (term.state == TermState::not_now || term.state == TermState::not_examined) break;
        bool const unsure = term.state == TermState::unsure || term.how == Mapping::shared_id;
        auto& list = term.state == TermState::excluded ? baby.absent
                     : unsure                          ? baby.unsure
                                                       : baby.present;
        list.push_back(statement(term, finding, sides, severity));
    }
    result_.terms.push_back(std::move(term));
}

void TermStatements::warn(Statement const& statement, std::string_view what) {
    diagnostics_.warning("record-contradicts", statement.as_written.span,
                         fmt::format("{}: `{}` {}", statement.as_written.text,
                                     ontology_.at(statement.finding).label, what));
}

bool TermStatements::contradicted(Statement const& absent) const {
    auto const& present = result_.baby.present;
    return std::any_of(present.begin(), present.end(), [&](Statement const& there) {
        if (sides_apart(there, absent)) return false;
        if (there.finding == absent.finding) return true;
        auto const above = ontology_.ancestors(there.finding);
        return std::find(above.begin(), above.end(), absent.finding) != above.end();
    });
}

/// One finding with two grades keeps the more severe.
void TermStatements::settle_grades() {
    auto& present = result_.baby.present;
    for (auto& statement : present) {
        for (auto const& other : present) {
            bool const differ = other.finding == statement.finding && other.grade &&
                                statement.grade && *other.grade > *statement.grade &&
                                other.sides == statement.sides;
            if (!differ) continue;
            warn(statement, "is recorded with two grades; the more severe one is used");
            statement.grade = other.grade;
        }
    }
}

void TermStatements::settle() {
    auto& baby = result_.baby;
    settle_grades();
    std::erase_if(baby.absent, [&](Statement const& absent) {
        if (!contradicted(absent)) return false;
        warn(absent, "is excluded, but it is also recorded as present; present stands");
        return true;
    });
    std::erase_if(baby.unsure, [&](Statement const& unsure) {
        return std::any_of(baby.present.begin(), baby.present.end(), [&](Statement const& there) {
            return there.finding == unsure.finding && !sides_apart(there, unsure);
        });
    });
}

}  // namespace asterism
