// SPDX-License-Identifier: MIT
#include "assess/trial.h"

#include <algorithm>

namespace asterism {

namespace {

std::optional<Urgency> highest(std::array<int, 4> const& by_urgency) {
    for (auto i = by_urgency.size(); i-- > 0;)
        if (by_urgency[i] > 0) return static_cast<Urgency>(i);
    return std::nullopt;
}

}  // namespace

std::shared_ptr<CaseTrial::Places const> CaseTrial::places(CompiledRulebook const& book) {
    auto const rules = [&](auto put) {
        for (RuleId id = 0; id < book.rules.size(); ++id) put(book.rules[id].when.literal.node, id);
    };
    auto const splits = [&](auto put) {
        for (std::uint32_t i = 0; i < book.splits.size(); ++i) {
            put(book.splits[i].counted.node, i);
            put(book.splits[i].unless.node, i);
        }
    };
    auto const nodes = book.circuit.size();
    return std::make_shared<Places const>(
        Places{Grouped<RuleId>(nodes, rules), Grouped<std::uint32_t>(nodes, splits)});
}

CaseTrial::CaseTrial(CompiledRulebook const& book, std::vector<Truth> values)
    : book_(book),
      ripple_(book.circuit, std::move(values)),
      places_(places(book)),
      standing_(book.book->services.size()) {
    start();
}

CaseTrial::CaseTrial(CaseTrial const& other, std::vector<Truth> values)
    : book_(other.book_),
      ripple_(other.ripple_, std::move(values)),
      places_(other.places_),
      standing_(book_.book->services.size()) {
    start();
}

void CaseTrial::start() {
    for (RuleId id = 0; id < book_.rules.size(); ++id)
        count(id, value_of(book_.rules[id].when.literal, ripple_.values()), 1);
    for (std::uint32_t i = 0; i < book_.splits.size(); ++i)
        hung_at_start_ = hung_at_start_ || hangs(i);
    for (auto const& verdict : verdicts())
        at_start_.push_back(verdict.verdict == Verdict::suggested);
}

void CaseTrial::count(RuleId rule, Truth value, int by) {
    if (value == Truth::no) return;
    for (auto const& [service, urgency] : book_.rules[rule].suggest) {
        auto& standing = standing_[service];
        bool const held = value == Truth::yes;
        (held ? standing.held : standing.open)[static_cast<std::size_t>(urgency)] += by;
        if (held) standing.all_held += by;
    }
}

void CaseTrial::follow(Ripple::Turn const& turn) {
    for (auto const rule : places_->rules.at(turn.node)) {
        bool const negated = book_.rules[rule].when.literal.negated;
        count(rule, negated ? !turn.before : turn.before, -1);
        count(rule, negated ? !turn.after : turn.after, 1);
        turned_ = true;
    }
}

void CaseTrial::apply(std::span<std::pair<NodeId, Truth> const> change) {
    ripple_.apply(change);
    for (; followed_ < ripple_.turns().size(); ++followed_) {
        auto const& turn = ripple_.turns()[followed_];
        follow(turn);
        auto const splits = places_->splits.at(turn.node);
        touched_.insert(touched_.end(), splits.begin(), splits.end());
    }
}

void CaseTrial::undo() {
    for (auto const& turn : ripple_.turns()) follow({turn.node, turn.after, turn.before});
    ripple_.undo();
    touched_.clear();
    turned_ = false;
    followed_ = 0;
}

/// As `open_splits` sees it.
bool CaseTrial::hangs(std::uint32_t split) const {
    auto const& [counted, unless] = book_.splits[split];
    return value_of(counted, ripple_.values()) == Truth::yes &&
           value_of(unless, ripple_.values()) == Truth::unknown;
}

bool CaseTrial::something_hangs() const {
    return hung_at_start_ || std::ranges::any_of(touched_, [&](auto i) { return hangs(i); });
}

bool CaseTrial::nothing_turned() const { return !turned_ && !something_hangs(); }

ServiceVerdict CaseTrial::by_standing(ServiceId service) const {
    ServiceVerdict result;
    result.urgency = highest(standing_[service].held);
    result.open_urgency = highest(standing_[service].open);
    result.verdict = verdict_of(result);
    return result;
}

std::vector<ServiceVerdict> CaseTrial::verdicts() const {
    if (something_hangs()) return asterism::verdicts(book_, ripple_.values());
    std::vector<ServiceVerdict> result;
    result.reserve(standing_.size());
    for (ServiceId service = 0; service < standing_.size(); ++service)
        result.push_back(by_standing(service));
    return result;
}

Verdict CaseTrial::verdict(ServiceId service) const {
    return something_hangs() ? verdicts()[service].verdict : by_standing(service).verdict;
}

std::vector<ServiceId> CaseTrial::suggested() const {
    auto const settled = something_hangs() ? verdicts() : std::vector<ServiceVerdict>();
    std::vector<ServiceId> result;
    for (ServiceId service = 0; service < standing_.size(); ++service) {
        bool const suggested = settled.empty() ? standing_[service].all_held > 0
                                               : settled[service].verdict == Verdict::suggested;
        if (suggested) result.push_back(service);
    }
    return result;
}

std::vector<ServiceId> CaseTrial::newly_suggested() const {
    if (nothing_turned()) return {};
    auto result = suggested();
    std::erase_if(result, [&](ServiceId service) { return at_start_[service]; });
    return result;
}

}  // namespace asterism
