// SPDX-License-Identifier: MIT
#include "oracle/disputed.h"

#include <algorithm>

namespace asterism::oracle {

namespace {

bool speaks_of(std::vector<Statement> const& statements, FindingId finding) {
    return std::any_of(statements.begin(), statements.end(),
                       [&](Statement const& s) { return s.finding == finding; });
}

/// Absent "on both sides" is absent, for the kinds of the finding too.
bool absent_on_both_sides(Case const& baby) {
    return std::any_of(baby.absent.begin(), baby.absent.end(),
                       [](Statement const& s) { return s.sides == Sides::both; });
}

/// Unsure of one side, sure of the other: that side is not examined, whatever the step is.
bool unsure_of_one_side(Case const& baby) {
    return std::any_of(baby.unsure.begin(), baby.unsure.end(), [&](Statement const& s) {
        return speaks_of(baby.present, s.finding) || speaks_of(baby.absent, s.finding);
    });
}

/// Unsure by eye, but measured: the measure decides.
bool unsure_but_measured(Subject const& subject, Case const& baby) {
    return std::any_of(baby.unsure.begin(), baby.unsure.end(), [&](Statement const& s) {
        auto const& derived = subject.compiled.derived[s.finding];
        return derived && !derived->tests.empty() && !baby.measures.empty();
    });
}

/// A kind that has no sides or grades of its own leaves those of the general finding unknown.
bool kind_without_sides(Subject const& subject, Case const& baby) {
    auto const& ontology = *subject.ontology;
    auto const concerned = [&](Statement const& s) {
        bool const paired = ontology.findings[s.finding].laterality == Laterality::paired;
        auto const above = ontology.ancestors(s.finding);
        return std::any_of(above.begin(), above.end(), [&](FindingId id) {
            auto const& general = ontology.findings[id];
            return !general.grades.empty() || (!paired && general.laterality == Laterality::paired);
        });
    };
    return std::any_of(baby.present.begin(), baby.present.end(), concerned) ||
           std::any_of(baby.unsure.begin(), baby.unsure.end(), concerned);
}

}  // namespace

bool disputed(Subject const& subject, Case const& baby) {
    return absent_on_both_sides(baby) || unsure_of_one_side(baby) ||
           unsure_but_measured(subject, baby) || kind_without_sides(subject, baby);
}

}  // namespace asterism::oracle
