// SPDX-License-Identifier: MIT
/// On which side a finding is, and how marked.
#include <algorithm>

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

/// Whether a statement speaks of one of these grades.
Truth has_grade(Statement const& statement, std::vector<std::uint32_t> const& wanted) {
    if (!statement.grade) return Truth::unknown;
    return certainly(std::find(wanted.begin(), wanted.end(), *statement.grade) != wanted.end());
}

}  // namespace

Truth Judge::finding_test(ConditionText const& c, Asker const& asker) {
    if (!c.grades) return at_place(*c.finding, c.place, asker);
    if (c.place == Place::anywhere) return graded(*c.finding, *c.grades, asker);
    return graded_at(*c.finding, c.place, *c.grades, asker);
}

Truth Judge::at_place(FindingText const& finding, Place place, Asker const& asker) {
    if (place == Place::anywhere) return present(finding, asker);
    auto const left = on(finding, Sides::left, asker);
    auto const right = on(finding, Sides::right, asker);
    if (place == Place::left) return left;
    if (place == Place::right) return right;
    if (place == Place::both) return both(left, right);
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
    auto const& statements = said(text);
    auto value =
        text.paired ? said_on(text, side, asker) : both(own_for(text, asker), Truth::unknown);
    if (!any_sided(statements.present))
        value = either(value, both(derivation(text), Truth::unknown));
    for (auto const* child : text.children) {
        // A kind that has no sides cannot speak against "absent on the left".
        if (!child->paired && any_on(statements.absent, side)) continue;
        value = either(value, on(*child, side, asker));
    }
    return value;
}

/// What was said of the finding itself on one side.
Truth Judge::said_on(FindingText const& finding, Sides side, Asker const& asker) {
    auto const& statements = said(finding);
    if (any_on(statements.present, side)) return Truth::yes;
    if (any_on(statements.absent, side)) return Truth::no;
    if (any_on(statements.unsure, side)) return unknown_for(finding, asker);
    if (own(finding) != Truth::yes) return own_for(finding, asker);
    if (!any_sided(statements.present)) return Truth::unknown;
    if (baby_.step_done[finding.step]) return Truth::no;
    return unrecorded_ == Unrecorded::is_normal ? Truth::no : Truth::unknown;
}

Truth Judge::graded(FindingText const& finding, std::vector<std::uint32_t> const& grades,
                    Asker const& asker) {
    if (own(finding) != Truth::yes)
        return either(own_for(finding, asker), if_nobody_said(finding, asker));
    auto value = Truth::no;
    for (auto const* statement : said(finding).present)
        value = either(value, has_grade(*statement, grades));
    return value;
}

/// Side and grade of one and the same statement.
Truth Judge::graded_at(FindingText const& finding, Place place,
                       std::vector<std::uint32_t> const& grades, Asker const& asker) {
    auto const parts = both(at_place(finding, place, asker), graded(finding, grades, asker));
    if ((place != Place::left && place != Place::right) || parts != Truth::yes) return parts;
    auto const wanted = place == Place::left ? Sides::left : Sides::right;
    auto value = Truth::no;
    for (auto const* statement : said(finding).present) {
        auto const grade = has_grade(*statement, grades);
        if (is_on(*statement, wanted)) value = either(value, grade);
        if (statement->sides == Sides::not_said) value = either(value, both(grade, Truth::unknown));
    }
    return value;
}

}  // namespace asterism::oracle
