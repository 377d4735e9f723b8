// SPDX-License-Identifier: MIT
#include "norms/standard.h"

#include <algorithm>

#include "norms/reading.h"

namespace asterism::norms {
namespace {

/// Leaves only the first of the readings that may be preferred.
void keep_first_preferred(std::vector<Answer>& answers) {
    bool taken = false;
    for (auto& answer : answers) {
        if (!answer) continue;
        answer->preferred = answer->preferred && !taken;
        taken = taken || answer->preferred;
    }
}

std::vector<Standards::Entry> entries_of(std::vector<Norm> const& norms) {
    std::vector<Standards::Entry> entries;
    for (auto const& norm : norms)
        entries.push_back({norm.description.norm, norm.description.measures});
    return entries;
}

bool covers(Standards::Entry const& entry, std::string_view measure) {
    return std::ranges::find(entry.measures, measure) != entry.measures.end();
}

void append(NormErrors& errors, NormErrors const& more) {
    errors.insert(errors.end(), more.begin(), more.end());
}

}  // namespace

tl::expected<Standards, NormErrors> Standards::build(std::vector<NormDescription> descriptions,
                                                     TableTexts const& tables) {
    std::vector<Norm> norms;
    NormErrors errors;
    for (auto& description : descriptions) {
        auto const same_id = [&](Norm const& norm) {
            return norm.description.norm == description.norm;
        };
        if (std::ranges::any_of(norms, same_id)) {
            errors.push_back({description.norm, "", 0,
                              "the norm `" + description.norm + "` is described twice"});
        }
        auto norm = make_norm(std::move(description), tables);
        if (norm) {
            norms.push_back(*std::move(norm));
        } else {
            append(errors, norm.error());
        }
    }
    if (!errors.empty()) return tl::make_unexpected(std::move(errors));
    auto entries = entries_of(norms);
    return Standards(std::move(norms), std::move(entries));
}

std::vector<Answer> Standards::readings(Query const& query) const {
    std::vector<Answer> answers;
    for (std::size_t i = 0; i < norms_.size(); ++i) {
        if (covers(entries_[i], query.measure)) answers.push_back(read_norm(norms_[i], query));
    }
    keep_first_preferred(answers);
    return answers;
}

std::optional<Reading> Standards::preferred(Query const& query) const {
    for (auto& answer : readings(query)) {
        if (answer && answer->preferred) return *std::move(answer);
    }
    return std::nullopt;
}

Norm const* Standards::find(std::string_view norm) const {
    auto const found = std::ranges::find(entries_, norm, &Entry::norm);
    if (found == entries_.end()) return nullptr;
    return &norms_[static_cast<std::size_t>(found - entries_.begin())];
}

std::vector<CurvePoint> curve(Norm const& norm, std::string_view measure, Sex sex, double z) {
    std::vector<CurvePoint> points;
    if (!norm.scale) return points;
    auto const keys = keys_of(*norm.scale, measure, sex);
    if (!keys) return points;
    for (auto key = keys->first; key <= keys->last; ++key) {
        if (auto const value = value_at(*norm.scale, {measure, sex, key}, z))
            points.push_back({key, *value});
    }
    return points;
}

}  // namespace asterism::norms
