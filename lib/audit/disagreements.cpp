// SPDX-License-Identifier: MIT
#include "audit/disagreements.h"

#include <algorithm>
#include <tuple>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "assess/assess.h"
#include "cases/read_case.h"
#include "yaml/read.h"

namespace asterism::audit {

namespace {

template <class Wanted>
std::vector<Disagreement> gather(AuditedBabies const& babies, std::size_t most, Wanted wanted) {
    std::vector<Disagreement> list;
    for (std::size_t i = 0; i < babies.babies.size(); ++i) {
        auto const& services = babies.babies[i].services;
        for (std::size_t k = 0; k < services.size(); ++k) {
            if (wanted(services[k])) list.push_back({i, k, services[k].urgency, {}, {}, {}});
        }
    }
    auto const key = [&](Disagreement const& d) {
        auto const& baby = babies.babies[d.baby];
        return std::tuple(-static_cast<int>(d.urgency), baby.day, baby.line, d.service);
    };
    std::sort(list.begin(), list.end(),
              [&](auto const& a, auto const& b) { return key(a) < key(b); });
    if (list.size() > most) list.resize(most);
    return list;
}

std::string in_words(std::vector<Evidence> const& evidence) {
    std::vector<std::string> words;
    for (auto const& one : evidence) {
        auto text = one.label;
        if (!one.side.empty()) text += ", " + one.side;
        if (one.kind == Evidence::Kind::tally && !one.value.empty()) text += ": " + one.value;
        if (one.kind == Evidence::Kind::measure && !one.value.empty()) text += " " + one.value;
        words.push_back(std::move(text));
    }
    return fmt::format("{}", fmt::join(words, "; "));
}

std::string in_words(Reason const& reason) {
    auto text = reason.text;
    if (!reason.evidence.empty()) text += " (" + in_words(reason.evidence) + ")";
    if (!reason.lacks.empty()) text += fmt::format(" - lacking: {}", fmt::join(reason.lacks, "; "));
    return text;
}

std::string found_in(Assessment const& assessment) {
    std::vector<Evidence> present;
    for (auto const& one : assessment.findings) {
        if (one.state == "present") present.push_back(one);
    }
    return in_words(present);
}

void explain(Assessment const& assessment, std::string const& service, Disagreement& found) {
    found.findings = found_in(assessment);
    for (auto const& referral : assessment.referrals) {
        if (referral.service != service) continue;
        for (auto const& reason : referral.reasons) {
            found.reasons.push_back(in_words(reason));
            found.rules.push_back(reason.rule);
        }
    }
}

}  // namespace

std::vector<Disagreement> missed_referrals(AuditedBabies const& babies, std::size_t most) {
    return gather(babies, most, [](JudgedService const& s) { return s.in_book && s.missed(); });
}

std::vector<Disagreement> not_indicated_referrals(AuditedBabies const& babies, std::size_t most) {
    return gather(babies, most,
                  [](JudgedService const& s) { return s.in_book && s.not_indicated(); });
}

void explain(AuditedBabies const& babies, CasesPlan const& plan, std::vector<Disagreement>& list) {
    for (auto& found : list) {
        auto const& baby = babies.babies[found.baby];
        Diagnostics accepted_before;
        auto const node = yaml::read_json(make_source("", baby.text), accepted_before);
        auto const* const ready = plan.books.ready(baby.book);
        if (!node || !ready) continue;
        auto const one = read_case(*node, plan.books.ontology(), accepted_before);
        explain(assess(*ready->book, one), plan.books.services().ids()[found.service], found);
    }
}

}  // namespace asterism::audit
