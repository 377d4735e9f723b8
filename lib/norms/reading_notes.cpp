// SPDX-License-Identifier: MIT
#include "norms/reading_notes.h"

#include <algorithm>
#include <cmath>

namespace asterism::norms {
namespace {

/// Beyond this a slip of the pen is likelier than the value. The WHO's own flags lie at 5 SD for
/// heavy babies and heads, at 6 SD for length and light babies; the narrower one serves for all.
constexpr double implausible_z = 5;

bool assumes_birth(Window const& window, Query const& query) { return !query.age && window.age_to; }

bool concerns(Caution const& caution, Query const& query) {
    if (!query.gestation || !overlap(caution.gestation, *query.gestation)) return false;
    return !caution.sex || query.sex == Sex::undetermined || *caution.sex == query.sex;
}

bool spans_days(Reading const& reading) {
    auto const& all = reading.evaluations;
    return std::ranges::any_of(all, [&](auto const& one) { return one.key != all.front().key; });
}

bool spans_sexes(Reading const& reading) {
    auto const& all = reading.evaluations;
    return std::ranges::any_of(all, [&](auto const& one) { return one.sex != all.front().sex; });
}

bool is_implausible(Band z) {
    return std::abs(z.low) > implausible_z || std::abs(z.high) > implausible_z;
}

}  // namespace

std::vector<std::string> reading_notes(Norm const& norm, Window const& window, Query const& query,
                                       Reading const& reading) {
    std::vector<std::string> notes;
    if (assumes_birth(window, query))
        notes.emplace_back("the age is not given: taken as measured at birth");
    if (spans_days(reading)) {
        notes.push_back("the days of gestation are not given: a band over " +
                        gestation_text(*query.gestation));
    }
    if (spans_sexes(reading))
        notes.emplace_back("the sex is undetermined or not given: a band over both sexes");
    for (auto const& caution : norm.description.cautions) {
        if (concerns(caution, query)) notes.push_back(caution.text);
    }
    if (reading.z && is_implausible(*reading.z)) {
        notes.emplace_back("more than 5 SD from the median: check the reading and its unit");
    }
    return notes;
}

}  // namespace asterism::norms
