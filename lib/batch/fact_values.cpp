// SPDX-License-Identifier: MIT
#include "batch/fact_values.h"

namespace asterism::batch {

Truth FactValues::of_finding(FindingId id, FindingFact const& fact) const {
    switch (fact.kind) {
        case Fact::Kind::finding: return finding(id);
        case Fact::Kind::history_assumed: return truth(states_.of(id).own == Truth::yes);
        case Fact::Kind::left: return side(id, Sides::left);
        case Fact::Kind::right: return side(id, Sides::right);
        case Fact::Kind::grade: return grade(id, fact.detail);
        default: return truth(states_.of(id).familial);
    }
}

Truth FactValues::finding(FindingId id) const {
    auto const own = states_.of(id).own;
    return own == Truth::unknown && examined(id) ? missing() : own;
}

Truth FactValues::side(FindingId id, Sides wanted) const {
    auto const& state = states_.of(id);
    if (has(state.present_sides, wanted)) return Truth::yes;
    if (has(state.absent_sides, wanted)) return Truth::no;
    if (state.own != Truth::yes) return not_present(id);
    if (state.present_sides == Sides::not_said) return Truth::unknown;
    return baby_.steps.has(book_.brief(id).step) ? Truth::no : missing();
}

Truth FactValues::grade(FindingId id, std::uint32_t wanted) const {
    if (states_.of(id).own != Truth::yes) return not_present(id);
    Truth result = Truth::no;
    for (auto const& s : baby_.statements) {
        if (s.finding != id || s.stated != Stated::present) continue;
        result = result |
                 (s.grade == FastStatement::no_grade ? Truth::unknown : truth(s.grade == wanted));
    }
    return result;
}

Truth FactValues::of_baby(BabyFact const& fact) const {
    auto const& ranges = book_.whole().ranges;
    switch (fact.kind) {
        case Fact::Kind::measure: return tests_[fact.detail].value_or(missing());
        case Fact::Kind::measure_by_eye: return tests_[fact.detail].value_or(Truth::no);
        case Fact::Kind::measure_red_flag:
            return truth(tests_[fact.detail].value_or(Truth::no) != Truth::no);
        case Fact::Kind::age:
            return ranges[fact.detail].contains(baby_.age->hours, baby_.age->hours);
        default:
            return ranges[fact.detail].contains(baby_.gestation->min_days,
                                                baby_.gestation->max_days);
    }
}

}  // namespace asterism::batch
