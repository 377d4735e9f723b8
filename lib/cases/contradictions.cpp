// SPDX-License-Identifier: MIT
#include "cases/contradictions.h"

#include <fmt/format.h>

namespace asterism {

namespace {

void report(Statement const& statement, Statement const& other, std::string message,
            std::string_view other_is, Diagnostics& diagnostics) {
    diagnostics.add({"contradiction",
                     Severity::error,
                     std::move(message),
                     statement.as_written.span,
                     {{other.as_written.span, std::string(other_is)}},
                     "keep one of the two"});
}

/// `present: left` and `absent: right` go together; anything else of the same finding does not.
bool sides_apart(Statement const& a, Statement const& b) {
    bool const both_said = a.sides != Sides::not_said && b.sides != Sides::not_said;
    return both_said && (static_cast<int>(a.sides) & static_cast<int>(b.sides)) == 0;
}

/// Whether what is absent surely takes in what is present. A side left open may be the other one.
bool overlaps(Statement const& present, Statement const& absent) {
    if (absent.sides == Sides::not_said || absent.sides == Sides::both) return true;
    return present.sides != Sides::not_said && !sides_apart(present, absent);
}

void check_pair(Statement const& present, Statement const& absent, Ontology const& ontology,
                Diagnostics& diagnostics) {
    if (present.finding == absent.finding) {
        if (sides_apart(present, absent)) return;
        report(present, absent,
               fmt::format("`{}` is stated present and absent", present.as_written.text),
               "stated absent here", diagnostics);
        return;
    }
    if (!overlaps(present, absent)) return;
    for (auto const ancestor : ontology.ancestors(present.finding)) {
        if (ancestor != absent.finding) continue;
        report(
            present, absent,
            fmt::format("`{}` is stated present, but it is a kind of `{}`, which is stated absent",
                        present.as_written.text, absent.as_written.text),
            "stated absent here", diagnostics);
    }
}

void check_twice(Statement const& first, Statement const& second, Diagnostics& diagnostics) {
    if (first.finding != second.finding) return;
    if (first.familial != second.familial) {
        report(second, first,
               fmt::format("`{}` is stated familial and not familial", second.as_written.text),
               "stated otherwise here", diagnostics);
    } else if (first.grade && second.grade && *first.grade != *second.grade &&
               first.sides == second.sides) {
        report(second, first, fmt::format("`{}` is stated with two grades", second.as_written.text),
               "the other grade", diagnostics);
    }
}

void check_unsure(Statement const& statement, std::string_view stated, Case const& baby,
                  Diagnostics& diagnostics) {
    for (auto const& unsure : baby.unsure) {
        if (unsure.finding != statement.finding || sides_apart(statement, unsure)) continue;
        report(statement, unsure,
               fmt::format("`{}` is stated {} and unsure", statement.as_written.text, stated),
               "stated unsure here", diagnostics);
    }
}

}  // namespace

void check_contradictions(Case const& baby, Ontology const& ontology, Diagnostics& diagnostics) {
    for (std::size_t i = 0; i < baby.present.size(); ++i) {
        auto const& present = baby.present[i];
        for (auto const& absent : baby.absent) check_pair(present, absent, ontology, diagnostics);
        check_unsure(present, "present", baby, diagnostics);
        for (std::size_t k = 0; k < i; ++k) check_twice(baby.present[k], present, diagnostics);
    }
    for (auto const& absent : baby.absent) {
        // Absent on one side leaves the other to be unsure of.
        bool const one_side = absent.sides == Sides::left || absent.sides == Sides::right;
        if (!one_side) check_unsure(absent, "absent", baby, diagnostics);
    }
    if (!baby.history_none) return;
    for (auto const& present : baby.present) {
        if (!ontology.region_of(present.finding).history) continue;
        diagnostics.error("contradiction", present.as_written.span,
                          fmt::format("the history is stated `none`, but `{}` is stated present",
                                      present.as_written.text));
    }
}

}  // namespace asterism
