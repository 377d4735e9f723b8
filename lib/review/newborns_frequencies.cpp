// SPDX-License-Identifier: MIT
#include <algorithm>
#include <map>

#include "review/newborns.h"

namespace asterism {

namespace {

constexpr double per = 10000;

using Rows = std::map<FindingId, Prevalence const*>;

Rows rows_by_finding(Ontology const& ontology) {
    Rows rows;
    for (auto const& row : ontology.prevalences) rows.emplace(row.finding, &row);
    return rows;
}

Prevalence const* row_of(Rows const& rows, FindingId finding) {
    auto const found = rows.find(finding);
    return found == rows.end() ? nullptr : found->second;
}

bool by_definition(Prevalence const* row) {
    return row && row->population.starts_with("by definition");
}

bool is_variant(FindingClass value) {
    return value == FindingClass::minor_variant || value == FindingClass::normal_variant;
}

/// A row for one sex only speaks of that sex when it says so, otherwise of all births.
double in_those_who_can(Ontology const& ontology, Prevalence const& row) {
    bool const one_sex = ontology.at(row.finding).sex != Sex::not_given;
    auto const says = [&](char const* word) {
        return row.population.find(word) != std::string::npos;
    };
    bool const of_that_sex = says("boys") || says("girls") || says("males") || says("females");
    return row.per_10000 * (one_sex && !of_that_sex ? 2 : 1);
}

/// The frequency per 10,000 before kinds are taken off; nothing for what is not drawn.
std::optional<Frequency> own_frequency(CompiledRulebook const& book, FindingId id,
                                       Prevalence const* row, NewbornModel const& model) {
    auto const value = book.class_of(id);
    auto const& ontology = *book.ontology;
    if (!value || ontology.region_of(id).history) return std::nullopt;
    bool const minor = *value == FindingClass::minor_variant;
    bool const harmless = is_variant(*value) || by_definition(row);
    bool const drawn = ontology.at(id).history
                           ? !harmless && !model.healthy_only  // a test's result
                           : harmless || !model.healthy_only;
    if (!drawn) return std::nullopt;
    if (row) return Frequency{id, in_those_who_can(ontology, *row), FrequencyFrom::row, minor};
    if (minor) return Frequency{id, model.minor_default, FrequencyFrom::minor_default, true};
    if (!is_variant(*value)) return std::nullopt;
    return Frequency{id, model.normal_default, FrequencyFrom::normal_default, false};
}

std::optional<FindingId> nearest_with_row(Ontology const& ontology, FindingId id,
                                          std::map<FindingId, Frequency> const& all) {
    for (auto const ancestor : ontology.ancestors(id)) {
        auto const found = all.find(ancestor);
        if (found != all.end() && found->second.from == FrequencyFrom::row) return ancestor;
    }
    return std::nullopt;
}

}  // namespace

std::vector<Frequency> frequencies(CompiledRulebook const& book, NewbornModel const& model) {
    auto const& ontology = *book.ontology;
    auto const rows = rows_by_finding(ontology);
    std::map<FindingId, Frequency> all;
    for (FindingId id = 0; id < ontology.findings.size(); ++id) {
        if (auto const own = own_frequency(book, id, row_of(rows, id), model)) all[id] = *own;
    }
    std::map<FindingId, double> taken;
    for (auto const& [id, frequency] : all) {
        auto const above = nearest_with_row(ontology, id, all);
        if (above) taken[*above] += frequency.probability;
    }
    std::vector<Frequency> result;
    for (auto& [id, frequency] : all) {
        if (taken.count(id) > 0) {
            frequency.probability = std::max(0.0, frequency.probability - taken[id]);
            frequency.from = FrequencyFrom::rest_of_row;
        }
        frequency.probability /= per;
        result.push_back(frequency);
    }
    return result;
}

std::vector<FindingId> uncounted(CompiledRulebook const& book) {
    auto const& ontology = *book.ontology;
    auto const rows = rows_by_finding(ontology);
    std::vector<FindingId> result;
    for (FindingId id = 0; id < ontology.findings.size(); ++id) {
        auto const value = book.class_of(id);
        if (!value || is_variant(*value) || ontology.region_of(id).history) continue;
        auto const above = ontology.ancestors(id);
        bool const counted =
            row_of(rows, id) || std::any_of(above.begin(), above.end(), [&](FindingId ancestor) {
                return row_of(rows, ancestor) != nullptr;
            });
        if (!counted) result.push_back(id);
    }
    return result;
}

}  // namespace asterism
