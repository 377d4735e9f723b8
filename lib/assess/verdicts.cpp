// SPDX-License-Identifier: MIT
#include "assess/verdicts.h"

#include <algorithm>

namespace asterism {

namespace {

void raise(std::optional<Urgency>& highest, Urgency urgency) {
    highest = highest ? std::max(*highest, urgency) : urgency;
}

using Held = std::vector<std::pair<NodeId, Truth>>;

/// More open splits than this are left unsettled: every one doubles the work.
constexpr std::size_t most_splits = 4;

/// The nodes on which a count hangs although its minor variant is there.
std::vector<Literal> open_splits(CompiledRulebook const& book, std::span<Truth const> values) {
    std::vector<Literal> open;
    for (auto const& split : book.splits) {
        bool const hangs = value_of(split.counted, values) == Truth::yes &&
                           value_of(split.unless, values) == Truth::unknown;
        if (hangs && std::find(open.begin(), open.end(), split.unless) == open.end())
            open.push_back(split.unless);
    }
    return open;
}

std::vector<Truth> evaluated(CompiledRulebook const& book, std::span<Truth const> values,
                             std::vector<Literal> const& open, unsigned found) {
    Held held;
    for (std::size_t i = 0; i < open.size(); ++i) {
        bool const yes = ((found >> i & 1u) != 0) != open[i].negated;
        held.emplace_back(open[i].node, truth(yes));
    }
    std::vector<Truth> result(values.begin(), values.end());
    book.circuit.evaluate(result, held);
    return result;
}

std::vector<ServiceVerdict> by_rules(CompiledRulebook const& book, std::span<Truth const> values) {
    std::vector<ServiceVerdict> result(book.book->services.size());
    for (auto const& rule : book.rules) {
        auto const value = value_of(rule.when.literal, values);
        if (value == Truth::no) continue;
        for (auto const& [service, urgency] : rule.suggest) {
            auto& verdict = result[service];
            raise(value == Truth::yes ? verdict.urgency : verdict.open_urgency, urgency);
        }
    }
    return result;
}

/// Keeps what holds in every branch: a suggestion, at the lowest of its urgencies.
void keep_common(std::vector<std::optional<Urgency>>& common,
                 std::vector<ServiceVerdict> const& branch, bool first) {
    for (std::size_t i = 0; i < common.size(); ++i) {
        if (first)
            common[i] = branch[i].urgency;
        else
            common[i] = common[i] && branch[i].urgency
                            ? std::optional(std::min(*common[i], *branch[i].urgency))
                            : std::nullopt;
    }
}

void settle_splits(CompiledRulebook const& book, std::span<Truth const> values,
                   std::vector<ServiceVerdict>& verdicts) {
    auto const open = open_splits(book, values);
    if (open.empty() || open.size() > most_splits) return;
    std::vector<std::optional<Urgency>> common(verdicts.size());
    for (unsigned found = 0; found < (1u << open.size()); ++found) {
        keep_common(common, by_rules(book, evaluated(book, values, open, found)), found == 0);
    }
    for (std::size_t i = 0; i < verdicts.size(); ++i) {
        if (common[i] && (!verdicts[i].urgency || *verdicts[i].urgency < *common[i]))
            verdicts[i].urgency = common[i];
    }
}

}  // namespace

std::vector<Truth> with_splits_closed(CompiledRulebook const& book, std::span<Truth const> values) {
    auto const open = open_splits(book, values);
    return open.empty() ? std::vector<Truth>(values.begin(), values.end())
                        : evaluated(book, values, open, 0);
}

std::string_view to_text(Verdict verdict) {
    switch (verdict) {
        case Verdict::suggested: return "suggested";
        case Verdict::unsettled: return "unsettled";
        case Verdict::not_suggested: return "not-suggested";
    }
    return "";
}

Verdict verdict_of(ServiceVerdict const& service) {
    if (service.urgency) return Verdict::suggested;
    return service.open_urgency ? Verdict::unsettled : Verdict::not_suggested;
}

std::vector<ServiceVerdict> verdicts(CompiledRulebook const& book, std::span<Truth const> values) {
    auto result = by_rules(book, values);
    settle_splits(book, values, result);
    for (auto& verdict : result) verdict.verdict = verdict_of(verdict);
    return result;
}

std::vector<RuleId> deciding_rules(CompiledRulebook const& book, std::span<Truth const> values,
                                   ServiceId service) {
    std::vector<RuleId> rules;
    for (RuleId id = 0; id < book.rules.size(); ++id) {
        auto const& rule = book.rules[id];
        if (urgency_for(rule, service) && value_of(rule.when.literal, values) == Truth::yes)
            rules.push_back(id);
    }
    return rules;
}

std::optional<Urgency> urgency_for(CompiledRule const& rule, ServiceId service) {
    std::optional<Urgency> result;
    for (auto const& suggestion : rule.suggest) {
        if (suggestion.service == service) raise(result, suggestion.urgency);
    }
    return result;
}

}  // namespace asterism
