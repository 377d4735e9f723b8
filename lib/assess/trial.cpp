// SPDX-License-Identifier: MIT
#include "assess/trial.h"

#include <algorithm>

namespace asterism {

namespace {

using Numbered = std::vector<std::pair<std::uint32_t, std::uint32_t>>;

Numbered rules_by_node(CompiledRulebook const& book) {
    Numbered result;
    result.reserve(book.rules.size());
    for (RuleId id = 0; id < book.rules.size(); ++id)
        result.emplace_back(book.rules[id].when.literal.node, id);
    return result;
}

Numbered splits_by_node(CompiledRulebook const& book) {
    Numbered result;
    for (std::uint32_t i = 0; i < book.splits.size(); ++i) {
        result.emplace_back(book.splits[i].counted.node, i);
        result.emplace_back(book.splits[i].unless.node, i);
    }
    return result;
}

std::optional<Urgency> highest(std::array<int, 4> const& by_urgency) {
    for (auto i = by_urgency.size(); i-- > 0;)
        if (by_urgency[i] > 0) return static_cast<Urgency>(i);
    return std::nullopt;
}

}  // namespace

Trial::Trial(CompiledRulebook const& book, std::vector<Truth> values)
    : book_(book),
      ripple_(book.circuit, std::move(values)),
      rules_(book.circuit.size(), rules_by_node(book)),
      splits_(book.circuit.size(), splits_by_node(book)),
      standing_(book.book->services.size()) {
    for (RuleId id = 0; id < book.rules.size(); ++id)
        count(id, value_of(book.rules[id].when.literal, ripple_.values()), 1);
    for (std::uint32_t i = 0; i < book.splits.size(); ++i)
        hung_at_start_ = hung_at_start_ || hangs(i);
    for (auto const& verdict : verdicts())
        at_start_.push_back(verdict.verdict == Verdict::suggested);
}

void Trial::count(RuleId rule, Truth value, int by) {
    if (value == Truth::no) return;
    for (auto const& [service, urgency] : book_.rules[rule].suggest) {
        auto& standing = standing_[service];
        auto& rules = value == Truth::yes ? standing.held : standing.open;
        rules[static_cast<std::size_t>(urgency)] += by;
    }
}

void Trial::follow(Ripple::Turn const& turn) {
    for (auto const rule : rules_.at(turn.node)) {
        bool const negated = book_.rules[rule].when.literal.negated;
        count(rule, negated ? !turn.before : turn.before, -1);
        count(rule, negated ? !turn.after : turn.after, 1);
        turned_ = true;
    }
}

void Trial::apply(std::span<std::pair<NodeId, Truth> const> change) {
    ripple_.apply(change);
    for (; followed_ < ripple_.turns().size(); ++followed_) {
        auto const& turn = ripple_.turns()[followed_];
        follow(turn);
        auto const splits = splits_.at(turn.node);
        touched_.insert(touched_.end(), splits.begin(), splits.end());
    }
}

void Trial::undo() {
    for (auto const& turn : ripple_.turns()) follow({turn.node, turn.after, turn.before});
    ripple_.undo();
    touched_.clear();
    turned_ = false;
    followed_ = 0;
}

/// As `open_splits` sees it.
bool Trial::hangs(std::uint32_t split) const {
    auto const& [counted, unless] = book_.splits[split];
    return value_of(counted, ripple_.values()) == Truth::yes &&
           value_of(unless, ripple_.values()) == Truth::unknown;
}

bool Trial::something_hangs() const {
    return hung_at_start_ || std::ranges::any_of(touched_, [&](auto i) { return hangs(i); });
}

bool Trial::nothing_turned() const { return !turned_ && !something_hangs(); }

ServiceVerdict Trial::by_standing(ServiceId service) const {
    ServiceVerdict result;
    result.urgency = highest(standing_[service].held);
    result.open_urgency = highest(standing_[service].open);
    result.verdict = verdict_of(result);
    return result;
}

std::vector<ServiceVerdict> Trial::verdicts() const {
    if (something_hangs()) return asterism::verdicts(book_, ripple_.values());
    std::vector<ServiceVerdict> result;
    result.reserve(standing_.size());
    for (ServiceId service = 0; service < standing_.size(); ++service)
        result.push_back(by_standing(service));
    return result;
}

Verdict Trial::verdict(ServiceId service) const {
    return something_hangs() ? verdicts()[service].verdict : by_standing(service).verdict;
}

std::vector<ServiceId> Trial::newly_suggested() const {
    std::vector<ServiceId> result;
    if (nothing_turned()) return result;
    auto const settled = something_hangs() ? verdicts() : std::vector<ServiceVerdict>();
    for (ServiceId service = 0; service < standing_.size(); ++service) {
        if (at_start_[service]) continue;
        auto const now = settled.empty() ? by_standing(service) : settled[service];
        if (now.verdict == Verdict::suggested) result.push_back(service);
    }
    return result;
}

}  // namespace asterism
