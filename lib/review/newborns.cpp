// SPDX-License-Identifier: MIT
#include "review/newborns.h"

#include <algorithm>

#include <fmt/format.h>

namespace asterism {

namespace {

// The link: a single palmar crease is seen 1.6 to 2.1 times as often in low birth weight (Madison
// study, Am J Med Genet 1976; the abstract was read). The middle of it, applied to babies drawn as
// very small for gestation, who stand for low birth weight here.

constexpr int age_hours = 30;
constexpr int gestation_days = 39 * 7 + 2;

std::vector<bool> bedside_steps(Ontology const& ontology) {
    std::vector<bool> done;
    for (auto const& step : ontology.steps) {
        bool const told = step.result || ontology.regions[step.region].history;
        done.push_back(!told);
    }
    return done;
}

Statement present(Ontology const& ontology, FindingId finding) {
    Statement statement;
    statement.finding = finding;
    statement.as_written = ontology.at(finding).id;
    return statement;
}

}  // namespace

bool can_occur(Ontology const& ontology, FindingId finding, Sex sex) {
    auto const only = ontology.at(finding).sex;
    return only == Sex::not_given || only == sex;
}

Newborns::Newborns(CompiledRulebook const& book, std::vector<Frequency> frequencies,
                   std::uint64_t seed)
    : ontology_(*book.ontology),
      frequencies_(std::move(frequencies)),
      step_done_(bedside_steps(ontology_)),
      small_(ontology_.finding(link_small_baby)),
      crease_(ontology_.finding(link_crease)),
      random_(seed) {
    // The finding that another hangs on is drawn first.
    std::stable_partition(frequencies_.begin(), frequencies_.end(),
                          [&](Frequency const& f) { return f.finding == small_; });
}

Newborns::Newborns(CompiledRulebook const& book, NewbornModel const& model, std::uint64_t seed)
    : Newborns(book, asterism::frequencies(book, model), seed) {}

bool Newborns::happens(double probability) {
    // Not std::bernoulli_distribution: its draws differ between libraries.
    constexpr double range = 18446744073709551616.0;  // 2^64
    return static_cast<double>(random_()) < probability * range;
}

Case Newborns::next() {
    Case baby;
    baby.id.text = fmt::format("newborn-{}", ++drawn_);
    baby.sex = happens(0.5) ? Sex::female : Sex::male;
    baby.gestation = Gestation{gestation_days, gestation_days};
    baby.age = Duration{age_hours};
    baby.step_done = step_done_;
    bool small = false;
    for (auto const& frequency : frequencies_) {
        if (!can_occur(ontology_, frequency.finding, baby.sex)) continue;
        bool const linked = small && frequency.finding == crease_;
        if (!happens(frequency.probability * (linked ? link_factor : 1))) continue;
        small = small || frequency.finding == small_;
        baby.present.push_back(present(ontology_, frequency.finding));
    }
    return baby;
}

}  // namespace asterism
