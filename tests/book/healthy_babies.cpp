// SPDX-License-Identifier: MIT
#include "healthy_babies.h"

#include <algorithm>
#include <map>
#include <numeric>

#include "shipped_book.h"

namespace asterism::testing {

namespace {

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
    return frequency.probability * (linked ? link_factor : 1);
}

std::vector<double> key_probabilities(CompiledRulebook const& book,
                                      std::vector<Frequency> const& frequencies,
                                      Stratum const& stratum) {
    std::map<KeyId, double> missed;  // probability that no finding of the key is there
    for (auto const& frequency : frequencies) {
        if (!frequency.minor || !can_occur(*book.ontology, frequency.finding, stratum.sex))
            continue;
        auto& none = missed.emplace(*book.classes[frequency.finding]->key, 1.0).first->second;
        none *= 1 - within(stratum, frequency, finding(link_small_baby), finding(link_crease));
    }
    std::vector<double> result;
    for (auto const& [key, none] : missed) result.push_back(1 - none);
    return result;
}

}  // namespace

std::vector<Frequency> frequencies(CompiledRulebook const& book, double minor_default) {
    NewbornModel model;
    model.healthy_only = true;
    model.minor_default = minor_default;
    return asterism::frequencies(book, model);
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

std::vector<double> exact_minor_counts(CompiledRulebook const& book,
                                       std::vector<Frequency> const& frequencies) {
    auto const small = std::find_if(frequencies.begin(), frequencies.end(), [](auto const& f) {
        return f.finding == finding(link_small_baby);
    });
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
