// SPDX-License-Identifier: MIT
#include "review/compare.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include <fmt/format.h>

#include "assess/facts.h"
#include "assess/verdicts.h"
#include "review/newborns.h"
#include "review/vignette.h"

namespace asterism {

namespace {

std::vector<std::string> rule_names(CompiledRulebook const& book, CaseFacts const& facts,
                                    ServiceId service) {
    auto rules = deciding_rules(book, facts.values, service);
    if (rules.empty()) rules = deciding_rules(book, facts.counted, service);
    std::vector<std::string> names;
    for (auto const rule : rules) names.push_back(book.syntax(book.rules[rule]).id.text);
    std::sort(names.begin(), names.end());
    return names;
}

/// The rules for a service that something not recorded leaves open.
std::vector<std::string> open_rules(CompiledRulebook const& book, CaseFacts const& facts,
                                    ServiceId service) {
    std::vector<std::string> names;
    for (auto const& rule : book.rules) {
        bool const open = value_of(rule.when.literal, facts.values) == Truth::unknown;
        if (open && urgency_for(rule, service)) names.push_back(book.syntax(rule).id.text);
    }
    std::sort(names.begin(), names.end());
    return names;
}

/// A baby as one book judges it.
struct Judged {
    Judged(CompiledRulebook const& by, Case const& baby)
        : book(by), facts(evaluate(by, baby, Rest::unknown)), found(verdicts(by, facts.values)) {}

    ServiceAnswer answer(std::optional<ServiceId> service) const {
        if (!service) return {};  // the book has no such service
        ServiceAnswer answer{found[*service].verdict, found[*service].urgency, {}};
        if (answer.verdict == Verdict::suggested) answer.rules = rule_names(book, facts, *service);
        if (answer.verdict == Verdict::unsettled) answer.rules = open_rules(book, facts, *service);
        return answer;
    }

    CompiledRulebook const& book;
    CaseFacts facts;
    std::vector<ServiceVerdict> found;  // by ServiceId
};

/// What became of one service's answer; nothing when it is the same.
std::optional<ChangeKind> change(ServiceAnswer const& before, ServiceAnswer const& after) {
    if (before.verdict != after.verdict) {
        if (after.verdict == Verdict::suggested) return ChangeKind::gained;
        if (before.verdict == Verdict::suggested) return ChangeKind::lost;
        return after.verdict == Verdict::unsettled ? ChangeKind::opened : ChangeKind::settled;
    }
    if (before.urgency != after.urgency) {
        return after.urgency > before.urgency ? ChangeKind::sooner : ChangeKind::later;
    }
    bool const same = after.verdict != Verdict::suggested || before.rules == after.rules;
    return same ? std::nullopt : std::optional(ChangeKind::reasons);
}

class CaseComparison {
public:
    CaseComparison(CompiledRulebook const& before, CompiledRulebook const& after)
        : before_(before), after_(after) {
        // The later book's services, then those that it no longer has.
        for (auto const& service : after.book->services) add(service.id.text);
        for (auto const& service : before.book->services) add(service.id.text);
    }

    CaseSetComparison compare(CaseSet const& set) const {
        CaseSetComparison result{set.origin, set.title, set.babies.size(), {}, {}};
        for (auto const& baby : set.babies) {
            auto changes = compare(baby.baby);
            if (changes.empty()) continue;
            result.changed.push_back(
                {baby.baby.id.text, baby.story, findings(baby.baby), std::move(changes)});
        }
        result.counts = counts(result.changed);
        return result;
    }

private:
    using Position = std::optional<ServiceId>;
    struct Pair {
        std::string service;
        Position before, after;
    };

    static Position position(CompiledRulebook const& book, std::string const& id) {
        auto const& all = book.book->services;
        for (ServiceId i = 0; i < all.size(); ++i) {
            if (all[i].id.text == id) return i;
        }
        return std::nullopt;
    }

    void add(std::string const& id) {
        bool const known = std::any_of(services_.begin(), services_.end(),
                                       [&](Pair const& pair) { return pair.service == id; });
        if (!known) services_.push_back({id, position(before_, id), position(after_, id)});
    }

    std::vector<ServiceChange> compare(Case const& baby) const {
        Judged const was(before_, baby), is(after_, baby);
        std::vector<ServiceChange> result;
        for (auto const& [service, old_place, new_place] : services_) {
            auto const before = was.answer(old_place), after = is.answer(new_place);
            auto const kind = change(before, after);
            if (kind) result.push_back({service, *kind, before, after});
        }
        return result;
    }

    std::string findings(Case const& baby) const {
        std::vector<std::string> labels;
        for (auto const& statement : baby.present) {
            labels.push_back(after_.ontology->at(statement.finding).label);
        }
        for (auto const& measure : baby.measures) {
            labels.push_back(fmt::format("{} {}", after_.ontology->measures[measure.measure].label,
                                         measure.as_written.text));
        }
        return fmt::format("{}", fmt::join(labels, "; "));
    }

    static std::vector<ChangeCount> counts(std::vector<BabyChange> const& changed) {
        std::map<std::tuple<ChangeKind, std::string, std::vector<std::string>>, std::size_t> all;
        for (auto const& baby : changed) {
            for (auto const& c : baby.changes) ++all[{c.kind, c.service, c.by()}];
        }
        std::vector<ChangeCount> result;
        for (auto const& [key, babies] : all) {
            auto const& [kind, service, by] = key;
            result.push_back({service, kind, by, babies});
        }
        std::stable_sort(result.begin(), result.end(),
                         [](auto const& a, auto const& b) { return a.babies > b.babies; });
        return result;
    }

    CompiledRulebook const& before_;
    CompiledRulebook const& after_;
    std::vector<Pair> services_;
};

BookIdentity identity(CompiledRulebook const& book) {
    auto const& header = book.book->header;
    return {header.id.text, header.version, header.effective.text, book.book->digest};
}

void add_vignettes(CompiledRulebook const& book, std::set<std::string>& seen, CaseSet& set,
                   Diagnostics& diagnostics) {
    std::map<std::string, std::string> stories;
    for (auto const& syntax : book.book->vignettes) stories[syntax.id.text] = syntax.story;
    for (auto& vignette : read_vignettes(book, diagnostics)) {
        if (!seen.insert(vignette.id.text).second) continue;
        vignette.baby.id = vignette.id;
        set.babies.push_back({std::move(vignette.baby), stories[vignette.id.text]});
    }
}

}  // namespace

std::string_view to_text(ChangeKind kind) {
    switch (kind) {
        case ChangeKind::gained: return "gained";
        case ChangeKind::lost: return "lost";
        case ChangeKind::sooner: return "sooner";
        case ChangeKind::later: return "later";
        case ChangeKind::opened: return "opened";
        case ChangeKind::settled: return "settled";
        case ChangeKind::reasons: return "reasons";
    }
    return "";
}

std::vector<std::string> ServiceChange::by() const {
    if (before.verdict != after.verdict) {
        bool const was = kind == ChangeKind::lost || kind == ChangeKind::settled;
        return was ? before.rules : after.rules;
    }
    std::vector<std::string> result;
    std::set_symmetric_difference(before.rules.begin(), before.rules.end(), after.rules.begin(),
                                  after.rules.end(), std::back_inserter(result));
    return result.empty() ? after.rules : result;
}

bool BookComparison::any_change() const {
    return !differences.empty() || std::any_of(sets.begin(), sets.end(), [](auto const& set) {
        return !set.changed.empty();
    });
}

CaseSet vignettes_of(CompiledRulebook const& before, CompiledRulebook const& after,
                     Diagnostics& diagnostics) {
    CaseSet set{CaseSet::Origin::vignettes, "vignettes", {}};
    std::set<std::string> seen;
    add_vignettes(after, seen, set, diagnostics);
    add_vignettes(before, seen, set, diagnostics);
    return set;
}

CaseSet simulated(CompiledRulebook const& book, std::size_t babies, std::uint64_t seed) {
    CaseSet set{CaseSet::Origin::newborns, fmt::format("simulated newborns, seed {}", seed), {}};
    Newborns newborns(book, NewbornModel{}, seed);
    for (std::size_t i = 0; i < babies; ++i) set.babies.push_back({newborns.next(), {}});
    return set;
}

BookComparison compare(CompiledRulebook const& before, CompiledRulebook const& after,
                       std::vector<CaseSet> const& sets) {
    BookComparison result{identity(before),
                          identity(after),
                          after.ontology->header.version,
                          after.ontology->digest,
                          differences(before, after),
                          {}};
    CaseComparison const cases(before, after);
    for (auto const& set : sets) result.sets.push_back(cases.compare(set));
    return result;
}

}  // namespace asterism
