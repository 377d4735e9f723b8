// SPDX-License-Identifier: MIT
/// On which side a finding is, and how marked.
#include "oracle/judge.h"
#include "oracle/kleene.h"

namespace asterism::oracle {

namespace {

bool is_on(Statement const& statement, Sides side) {
    return statement.sides == side || statement.sides == Sides::both;
}

bool any_on(std::vector<Statement const*> const& statements, Sides side) {
    for (auto const* statement : statements) {
        if (is_on(*statement, side)) return true;
    }
    return false;
}

bool any_sided(std::vector<Statement const*> const& statements) {
    for (auto const* statement : statements) {
        if (statement->sides != Sides::not_said) return true;
    }
    return false;
}

std::vector<std::string> words(yaml::Node const& node) {
    if (node.is_scalar()) return {node.text};
    std::vector<std::string> result;
    for (auto const& item : node.items) result.push_back(item.text);
    return result;
}

/// Whether a statement speaks of one of these grades.
Truth has_grade(Statement const& statement, Finding const& finding,
                std::vector<std::string> const& wanted) {
    if (!statement.grade) return Truth::unknown;
    for (auto const& grade : wanted) {
        if (finding.grades[*statement.grade].text == grade) return Truth::yes;
    }
    return Truth::no;
}

}  // namespace

Truth Judge::finding_test(std::string const& id, yaml::Node const* side, yaml::Node const* grade,
                          Asker const& asker) {
    if (!side && !grade) return present(id, asker);
    if (side && !grade) return on_side(id, side->text, asker);
    if (grade && !side) return graded(id, words(*grade), asker);
    return graded_on(id, side->text, words(*grade), asker);
}

Truth Judge::on_side(std::string const& finding, std::string const& side, Asker const& asker) {
    auto const& text = tables_.findings.at(finding);
    auto const left = on(text, Sides::left, asker);
    auto const right = on(text, Sides::right, asker);
    if (side == "left") return left;
    if (side == "right") return right;
    if (side == "both") return both(left, right);
    return both(present(finding, asker), opposite(both(left, right)));
}

/// Presence by something that tells neither side nor grade leaves them open.
Truth Judge::if_nobody_said(FindingText const& finding, Asker const& asker) {
    auto value = both(derivation(finding), Truth::unknown);
    for (auto const* child : finding.children)
        value = either(value, both(present(*child, asker), Truth::unknown));
    return value;
}

Truth Judge::on(FindingText const& text, Sides side, Asker const& asker) {
    auto const& id = text.name();
    bool const paired = text.finding->laterality == Laterality::paired;
    auto value = paired ? said_on(text, side, asker) : both(own_for(text, asker), Truth::unknown);
    if (!any_sided(said(id).present)) value = either(value, both(derivation(text), Truth::unknown));
    for (auto const* child : text.children) {
        bool const tells = child->finding->laterality == Laterality::paired;
        // A kind that has no sides cannot speak against "absent on the left".
        if (!tells && any_on(said(id).absent, side)) continue;
        value = either(value, on(*child, side, asker));
    }
    return value;
}

/// What was said of the finding itself on one side.
Truth Judge::said_on(FindingText const& finding, Sides side, Asker const& asker) {
    auto const& statements = said(finding.name());
    if (any_on(statements.present, side)) return Truth::yes;
    if (any_on(statements.absent, side)) return Truth::no;
    if (any_on(statements.unsure, side)) return unknown_for(finding, asker);
    if (own(finding) != Truth::yes) return own_for(finding, asker);
    if (!any_sided(statements.present)) return Truth::unknown;
    if (baby_.step_done[finding.step]) return Truth::no;
    return unrecorded_ == Unrecorded::is_normal ? Truth::no : Truth::unknown;
}

Truth Judge::graded(std::string const& finding, std::vector<std::string> const& grades,
                    Asker const& asker) {
    auto const& text = tables_.findings.at(finding);
    if (own(text) != Truth::yes) return either(own_for(text, asker), if_nobody_said(text, asker));
    auto value = Truth::no;
    for (auto const* statement : said(finding).present)
        value = either(value, has_grade(*statement, *text.finding, grades));
    return value;
}

/// Side and grade of one and the same statement.
Truth Judge::graded_on(std::string const& finding, std::string const& side,
                       std::vector<std::string> const& grades, Asker const& asker) {
    auto const parts = both(on_side(finding, side, asker), graded(finding, grades, asker));
    if ((side != "left" && side != "right") || parts != Truth::yes) return parts;
    auto const wanted = side == "left" ? Sides::left : Sides::right;
    auto value = Truth::no;
    for (auto const* statement : said(finding).present) {
        bool const there = is_on(*statement, wanted);
        auto const grade = has_grade(*statement, *tables_.findings.at(finding).finding, grades);
        if (there) value = either(value, grade);
        if (statement->sides == Sides::not_said) value = either(value, both(grade, Truth::unknown));
    }
    return value;
}

}  // namespace asterism::oracle
