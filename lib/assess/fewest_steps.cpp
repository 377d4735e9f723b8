// SPDX-License-Identifier: MIT
#include "assess/fewest_steps.h"

#include <algorithm>
#include <numeric>

namespace asterism {

namespace {

constexpr std::size_t most_steps = 5;
constexpr int most_trials = 20000;

}  // namespace

FewestSteps::FewestSteps(CompiledRulebook const& book, Case const& baby, WhatIf const& what_if)
    : book_(book), what_if_(what_if) {
    auto changes = what_if.steps_normal();
    for (StepId step = 0; step < changes.size(); ++step) {
        if (baby.step_done[step] || changes[step].empty()) continue;
        steps_.push_back(step);
        changes_.push_back(std::move(changes[step]));
    }
}

bool FewestSteps::settles(ServiceId service, Set const& set) const {
    std::vector<WhatIf::Change const*> changes;
    for (auto const index : set) changes.push_back(&changes_[index]);
    return what_if_.verdict(changes, service) != Verdict::unsettled;
}

FewestSteps::Set FewestSteps::all() const {
    Set set(steps_.size());
    std::iota(set.begin(), set.end(), std::size_t{0});
    return set;
}

/// A step is needed when all the others together do not settle it.
FewestSteps::Set FewestSteps::needed(ServiceId service) const {
    Set result;
    for (std::size_t left_out = 0; left_out < steps_.size(); ++left_out) {
        auto others = all();
        others.erase(others.begin() + static_cast<std::ptrdiff_t>(left_out));
        if (!settles(service, others)) result.push_back(left_out);
    }
    return result;
}

bool FewestSteps::extend(ServiceId service, Set& set, std::size_t from, std::size_t more,
                         int& trials) const {
    if (trials-- <= 0) return false;
    if (more == 0) return settles(service, set);
    for (std::size_t next = from; next < steps_.size(); ++next) {
        if (std::find(set.begin(), set.end(), next) != set.end()) continue;
        set.push_back(next);
        if (extend(service, set, next + 1, more - 1, trials)) return true;
        set.pop_back();
    }
    return false;
}

StepToDo FewestSteps::to_do(std::size_t index) const {
    auto const& step = book_.ontology->steps[steps_[index]];
    return {step.id.text,   step.label, book_.ontology->regions[step.region].label,
            step.essential, 0,          0};
}

void FewestSteps::find(ServiceId service, WhatWouldChange& result) const {
    if (steps_.empty() || !settles(service, all())) return;
    auto set = needed(service);
    int trials = most_trials;
    for (std::size_t more = 0; set.size() + more <= most_steps; ++more) {
        if (!extend(service, set, 0, more, trials)) continue;
        std::sort(set.begin(), set.end());
        std::stable_partition(set.begin(), set.end(), [&](std::size_t i) {
            return book_.ontology->steps[steps_[i]].essential;
        });
        for (auto const index : set) result.examine.push_back(to_do(index));
        return;
    }
    result.steps_to_complete = static_cast<int>(steps_.size());
}

}  // namespace asterism
