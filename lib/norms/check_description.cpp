// SPDX-License-Identifier: MIT
#include <algorithm>

#include "norms/norm.h"

namespace asterism::norms {
namespace {

/// Gathers what is wrong with one description.
class Check {
public:
    explicit Check(NormDescription const& description) : norm_(description) {}

    NormErrors run() {
        expect(!norm_.norm.empty(), "a norm needs an id");
        expect(!norm_.measures.empty(), "a norm needs a measure");
        check_source_of_numbers();
        check_kind();
        for (auto const& window : norm_.windows) check_window(window);
        for (auto const& caution : norm_.cautions) {
            expect(caution.gestation.first <= caution.gestation.last,
                   "a caution ends before it begins");
        }
        return std::move(errors_);
    }

private:
    void expect(bool holds, std::string message) {
        if (!holds) errors_.push_back({norm_.norm, "", 0, std::move(message)});
    }

    void check_source_of_numbers() {
        if (has_table(norm_.kind)) {
            expect(!norm_.table.empty(), "this kind of norm needs a table");
            return;
        }
        expect(norm_.table.empty(), "this kind of norm has no table");
        expect(!norm_.unit.empty(), "this kind of norm needs a unit");
        expect(norm_.measures.size() < 2, "a norm without a table has one measure");
    }

    void check_kind() {
        switch (norm_.kind) {
            case Kind::lms: return check_lms();
            case Kind::mean_sd: return check_mean_sd();
            case Kind::centiles: return check_centiles();
            case Kind::cut_off:
                return expect(!norm_.cut_offs.empty(), "a cut-off norm needs a cut-off");
            default: return;
        }
    }

    void check_lms() {
        expect(norm_.clock != Clock::none, "an LMS norm must say by what its rows are looked up");
        for (auto const& measure : norm_.who_tail) {
            auto const known = std::ranges::find(norm_.measures, measure) != norm_.measures.end();
            expect(known, "the WHO tail is for `" + measure + "`, which the norm does not cover");
        }
    }

    void check_mean_sd() {
        expect(norm_.mean.has_value(), "a mean and SD norm needs a mean");
        expect(norm_.sd && *norm_.sd > 0, "a mean and SD norm needs an SD above 0");
        expect((norm_.mean_per_week != 0) == (norm_.clock == Clock::gestation_day),
               "a mean that rises per week is looked up by gestation in days, and no other is");
    }

    void check_centiles() {
        auto const& printed = norm_.centiles;
        expect(!printed.empty(), "a centile norm needs centiles");
        expect(std::ranges::all_of(
                   printed, [](auto const& row) { return row.centile > 0 && row.centile < 100; }),
               "a centile lies between 0 and 100");
        auto const not_rising = [](auto const& a, auto const& b) {
            return a.centile >= b.centile || a.value >= b.value;
        };
        expect(std::ranges::adjacent_find(printed, not_rising) == printed.end(),
               "centiles and their values must rise");
    }

    void check_window(Window const& window) {
        expect(!window.gestation || window.gestation->first <= window.gestation->last,
               "a range of gestation ends before it begins");
        expect(!window.age_from || !window.age_to || *window.age_from <= *window.age_to,
               "a range of age ends before it begins");
    }

    NormDescription const& norm_;
    NormErrors errors_;
};

}  // namespace

NormErrors check_description(NormDescription const& description) {
    return Check(description).run();
}

}  // namespace asterism::norms
