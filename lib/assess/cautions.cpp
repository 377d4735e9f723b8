// SPDX-License-Identifier: MIT
#include <algorithm>

#include <fmt/format.h>

#include "assess/reports.h"

namespace asterism {

namespace {

class Cautions {
public:
    Cautions(CompiledRulebook const& book, Case const& baby, CaseFacts const& facts)
        : book_(book), baby_(baby), facts_(facts) {}

    std::vector<Caution> work_out() {
        for (auto const& statement : baby_.present) other_sex(statement);
        for (FindingId id = 0; id < book_.derived.size(); ++id) {
            if (book_.derived[id]) derived(id, *book_.derived[id]);
        }
        return std::move(result_);
    }

private:
    void other_sex(Statement const& statement) {
        auto const& finding = book_.ontology->at(statement.finding);
        bool const known = baby_.sex == Sex::female || baby_.sex == Sex::male;
        if (!known || finding.sex == Sex::not_given || finding.sex == baby_.sex) return;
        result_.push_back({fmt::format("{} is a finding of {} babies; the record says {}. It is "
                                       "judged as stated: check which is wrong.",
                                       finding.label, to_text(finding.sex), to_text(baby_.sex)),
                           {statement.as_written.span}});
    }

    MeasureReading const* taken(CompiledDerivation const& derivation, bool (*wanted)(Truth)) const {
        for (auto const index : derivation.tests) {
            auto const& test = book_.measure_tests[index];
            auto const value = value_of(test, facts_.readings);
            if (!value || !wanted(*value)) continue;
            for (auto const& reading : facts_.readings) {
                if (reading.measured.measure == test.measure) return &reading;
            }
        }
        return nullptr;
    }

    void derived(FindingId id, CompiledDerivation const& derivation) {
        auto const& state = facts_.states[id];
        auto const value = value_of(derivation.when.literal, facts_.values);
        auto const* reading = taken(derivation, [](Truth) { return true; });
        auto const& label = book_.ontology->at(id).label;
        bool const stated_present = state.origin == Origin::stated_present;
        bool const stated_absent = state.origin == Origin::stated_absent;
        if (reading &&
            ((stated_present && value == Truth::no) || (stated_absent && value == Truth::yes))) {
            result_.push_back(
                {fmt::format("{} is stated {}, but {} says otherwise; it is judged present.", label,
                             stated_present ? "present" : "absent",
                             reading->measured.as_written.text),
                 {state.statement->as_written.span, reading->measured.as_written.span}});
        } else if (!reading && stated_absent && value == Truth::yes) {
            result_.push_back(
                {fmt::format(
                     "{} is stated absent, but other findings imply it; it is judged present.",
                     label),
                 {state.statement->as_written.span}});
        }
        if (!reading && stated_present && !derivation.tests.empty()) {
            result_.push_back({fmt::format("{} was judged by eye: no measure is recorded.", label),
                               {state.statement->as_written.span}});
        }
        borderline(id, derivation, label);
    }

    void borderline(FindingId id, CompiledDerivation const& derivation, std::string const& label) {
        auto const* reading =
            taken(derivation, [](Truth value) { return value == Truth::unknown; });
        if (!reading) return;
        bool const red_flag = book_.class_of(id) == FindingClass::red_flag;
        result_.push_back(
            {fmt::format("{} is borderline: {} lies within the reading error of the cut-off{}.",
                         label, reading->measured.as_written.text,
                         red_flag ? "; the unsafe side is taken" : ""),
             {reading->measured.as_written.span}});
    }

    CompiledRulebook const& book_;
    Case const& baby_;
    CaseFacts const& facts_;
    std::vector<Caution> result_;
};

}  // namespace

std::vector<Caution> case_cautions(CompiledRulebook const& book, Case const& baby,
                                   CaseFacts const& facts) {
    return Cautions(book, baby, facts).work_out();
}

}  // namespace asterism
