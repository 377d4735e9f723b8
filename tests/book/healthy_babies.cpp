// SPDX-License-Identifier: MIT
#include "healthy_babies.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <optional>

#include "shipped_book.h"

namespace asterism::testing {

namespace {

constexpr double per = 10000;

// The book calls normal what more than 4 % have; a normal variant without a row is put there.
constexpr double normal_default = 400;

// Single palmar crease in low birth weight: 1.6 to 2.1 times as often (Madison study, Am J Med
// Genet 1976; the abstract was read). The middle of it, applied to babies drawn as very small for
// gestation, who stand for low birth weight here.
constexpr double crease_in_small_babies = 1.85;
constexpr auto small_baby = "very-small-for-gestational-age";
constexpr auto crease = "single-transverse-palmar-crease";

constexpr int age_hours = 30;
constexpr int gestation_days = 39 * 7 + 2;

std::map<FindingId, Prevalence const*> rows_by_finding(Ontology const& ontology) {
    std::map<FindingId, Prevalence const*> rows;
    for (auto const& row : ontology.prevalences) rows.emplace(row.finding, &row);
    return rows;
}

bool by_definition(Prevalence const* row) {
    return row && row->population.starts_with("by definition");
}

/// The frequency per 10,000 before kinds are taken off; nothing for what a healthy baby has not.
std::optional<Frequency> own_frequency(CompiledRulebook const& book, FindingId id,
                                       Prevalence const* row, double minor_default) {
    auto const value = book.class_of(id);
    if (!value || book.ontology->at(id).history) return std::nullopt;
    bool const minor = *value == FindingClass::minor_variant;
    bool const harmless = minor || *value == FindingClass::normal_variant;
    if (!harmless && !by_definition(row)) return std::nullopt;
    if (row) return Frequency{id, row->per_10000, FrequencyFrom::row, minor};
    if (minor) return Frequency{id, minor_default, FrequencyFrom::minor_default, true};
    return Frequency{id, normal_default, FrequencyFrom::normal_default, false};
}

std::optional<FindingId> nearest_with_row(Ontology const& ontology, FindingId id,
                                          std::map<FindingId, Frequency> const& all) {
    for (auto const ancestor : ontology.ancestors(id)) {
        auto const found = all.find(ancestor);
        if (found != all.end() && found->second.from == FrequencyFrom::row) return ancestor;
    }
    return std::nullopt;
}

bool can_occur(Ontology const& ontology, FindingId id, Sex sex) {
    auto const only = ontology.at(id).sex;
    return only == Sex::not_given || only == sex;
}

/// Probability of each number of successes when each key has its own probability.
std::vector<double> poisson_binomial(std::vector<double> const& probabilities) {
    std::vector<double> distribution{1};
    for (auto const p : probabilities) {
        distribution.push_back(0);
        for (std::size_t n = distribution.size() - 1; n > 0; --n) {
            distribution[n] = distribution[n] * (1 - p) + distribution[n - 1] * p;
        }
        distribution[0] *= 1 - p;
    }
    return distribution;
}

/// A stratum in which all findings are independent.
struct Stratum {
    Sex sex = Sex::female;
    bool small = false;
    double share = 0;
};

double within(Stratum const& stratum, Frequency const& frequency, FindingId small,
              FindingId crease_id) {
    if (frequency.finding == small) return stratum.small ? 1 : 0;
    bool const linked = stratum.small && frequency.finding == crease_id;
    return frequency.probability * (linked ? crease_in_small_babies : 1);
}

std::vector<double> key_probabilities(CompiledRulebook const& book,
                                      std::vector<Frequency> const& frequencies,
                                      Stratum const& stratum) {
    std::map<KeyId, double> missed;  // probability that no finding of the key is there
    for (auto const& frequency : frequencies) {
        if (!frequency.minor || !can_occur(*book.ontology, frequency.finding, stratum.sex))
            continue;
        auto& none = missed.emplace(*book.classes[frequency.finding]->key, 1.0).first->second;
        none *= 1 - within(stratum, frequency, finding(small_baby), finding(crease));
    }
    std::vector<double> result;
    for (auto const& [key, none] : missed) result.push_back(1 - none);
    return result;
}

}  // namespace

std::vector<Frequency> frequencies(CompiledRulebook const& book, double minor_default) {
    auto const& ontology = *book.ontology;
    auto const rows = rows_by_finding(ontology);
    std::map<FindingId, Frequency> all;
    for (FindingId id = 0; id < ontology.findings.size(); ++id) {
        auto const row = rows.find(id);
        auto const* own_row = row == rows.end() ? nullptr : row->second;
        if (auto const own = own_frequency(book, id, own_row, minor_default)) all[id] = *own;
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

std::vector<double> published_minor_rows(CompiledRulebook const& book) {
    std::vector<double> rows;
    for (auto const& row : book.ontology->prevalences) {
        bool const minor = book.class_of(row.finding) == FindingClass::minor_variant;
        if (minor && !book.ontology->at(row.finding).history) rows.push_back(row.per_10000);
    }
    std::sort(rows.begin(), rows.end());
    return rows;
}

HealthyBabies::HealthyBabies(CompiledRulebook const& book, std::vector<Frequency> frequencies,
                             std::uint64_t seed)
    : book_(book),
      frequencies_(std::move(frequencies)),
      small_(finding(small_baby)),
      crease_(finding(crease)),
      random_(seed) {
    for (auto const& step : book.ontology->steps) {
        bool const told = step.result || book.ontology->regions[step.region].history;
        step_done_.push_back(!told);
    }
    // The finding that others hang on is drawn first.
    std::stable_partition(frequencies_.begin(), frequencies_.end(),
                          [&](Frequency const& f) { return f.finding == small_; });
}

bool HealthyBabies::happens(double probability) {
    // Not std::bernoulli_distribution: its draws differ between libraries.
    constexpr double range = 18446744073709551616.0;  // 2^64
    return static_cast<double>(random_()) < probability * range;
}

Case HealthyBabies::next() {
    Case baby;
    baby.sex = happens(0.5) ? Sex::female : Sex::male;
    baby.gestation = Gestation{gestation_days, gestation_days};
    baby.age = Duration{age_hours};
    baby.step_done = step_done_;
    bool small = false;
    for (auto const& frequency : frequencies_) {
        if (!can_occur(*book_.ontology, frequency.finding, baby.sex)) continue;
        bool const linked = small && frequency.finding == crease_;
        if (!happens(frequency.probability * (linked ? crease_in_small_babies : 1))) continue;
        small = small || frequency.finding == small_;
        Statement statement;
        statement.finding = frequency.finding;
        statement.as_written = book_.ontology->at(frequency.finding).id;
        baby.present.push_back(std::move(statement));
    }
    return baby;
}

std::vector<double> exact_minor_counts(CompiledRulebook const& book,
                                       std::vector<Frequency> const& frequencies) {
    auto const small = std::find_if(frequencies.begin(), frequencies.end(),
                                    [](auto const& f) { return f.finding == finding(small_baby); });
    double const p_small = small == frequencies.end() ? 0 : small->probability;
    std::vector<double> total;
    for (auto const sex : {Sex::female, Sex::male}) {
        for (bool const is_small : {false, true}) {
            Stratum const stratum{sex, is_small, 0.5 * (is_small ? p_small : 1 - p_small)};
            auto const part = poisson_binomial(key_probabilities(book, frequencies, stratum));
            total.resize(std::max(total.size(), part.size()), 0);
            for (std::size_t n = 0; n < part.size(); ++n) total[n] += stratum.share * part[n];
        }
    }
    return total;
}

double tail(std::vector<double> const& distribution, std::size_t at_least) {
    auto const begin = std::min(at_least, distribution.size());
    return std::accumulate(distribution.begin() + static_cast<std::ptrdiff_t>(begin),
                           distribution.end(), 0.0);
}

}  // namespace asterism::testing
