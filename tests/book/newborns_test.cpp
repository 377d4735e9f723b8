// SPDX-License-Identifier: MIT
// Simulated newborns of every kind, beside the published rows that they are drawn from.
#include "review/newborns.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "assess/facts.h"
#include "assess/verdicts.h"
#include "shipped_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

constexpr std::size_t babies = 20000;

std::map<FindingId, Frequency> by_finding(NewbornModel const& model) {
    std::map<FindingId, Frequency> result;
    for (auto const& f : frequencies(shipped_book(), model)) result[f.finding] = f;
    return result;
}

std::vector<std::string> ids(Case const& baby) {
    std::vector<std::string> result;
    for (auto const& statement : baby.present) result.push_back(statement.as_written.text);
    return result;
}

}  // namespace

TEST_CASE("the same seed gives the same babies, another seed gives others") {
    Newborns one(shipped_book(), NewbornModel{}, 7), same(shipped_book(), NewbornModel{}, 7),
        other(shipped_book(), NewbornModel{}, 8);
    int different = 0;
    for (int i = 1; i <= 50; ++i) {
        auto const a = one.next(), b = same.next(), c = other.next();
        CHECK(a.id.text == "newborn-" + std::to_string(i));
        CHECK(ids(a) == ids(b));
        CHECK(a.sex == b.sex);
        different += ids(a) != ids(c) ? 1 : 0;
    }
    CHECK(different > 25);
}

TEST_CASE("the draws are the same on every machine") {
    // The generator is fixed by the C++ standard: the 10,000th value of a default-seeded
    // std::mt19937_64 is 9981545732273789042 ([rand.predef]).
    std::mt19937_64 standard;
    standard.discard(9999);
    CHECK(standard() == 9981545732273789042u);
}

TEST_CASE("major anomalies with a row are drawn, those without are said to be missing") {
    auto const all = by_finding({});
    // US births 2004 to 2006, 1 in 2,229 (the row in ontology/prevalences/abdomen.yaml).
    CHECK(all.at(finding("gastroschisis")).probability == doctest::Approx(0.00045));
    auto const missing = uncounted(shipped_book());
    for (auto const id : missing) CHECK(all.count(id) == 0);
    for (auto const& row : shipped_book().ontology->prevalences) {
        CHECK(std::find(missing.begin(), missing.end(), row.finding) == missing.end());
    }
    CHECK_FALSE(missing.empty());
    for (auto const& [id, frequency] : all) {
        CAPTURE(shipped_book().ontology->at(id).id.text);
        CHECK(frequency.probability >= 0);
        CHECK(frequency.probability <= 1);
        CHECK_FALSE(shipped_book().ontology->region_of(id).history);
    }
}

TEST_CASE("a row of all births is doubled for the one sex that can have the finding") {
    auto const all = by_finding({});
    CHECK(all.at(finding("penile-torsion")).probability == doctest::Approx(0.2));  // of boys
    double births = 0;
    auto const parent = finding("hypospadias");
    births += all.at(parent).probability;
    for (auto const kind : shipped_book().ontology->descendants(parent)) {
        if (all.count(kind) > 0) births += all.at(kind).probability;
    }
    CHECK(births == doctest::Approx(2 * 0.00186));  // European registries, per births
}

TEST_CASE("healthy babies have no major anomaly, red flag or test result; others have some") {
    NewbornModel healthy;
    healthy.healthy_only = true;
    for (auto const& [id, frequency] : by_finding(healthy)) {
        CAPTURE(shipped_book().ontology->at(id).id.text);
        CHECK_FALSE(shipped_book().ontology->at(id).history);
    }
    CHECK(by_finding(healthy).size() < by_finding({}).size());
}

TEST_CASE("what is drawn comes at the rate of the rows") {
    Newborns maker(shipped_book(), NewbornModel{}, 1);
    std::map<FindingId, std::size_t> seen;
    std::size_t girls = 0;
    for (std::size_t i = 0; i < babies; ++i) {
        auto const baby = maker.next();
        girls += baby.sex == Sex::female ? 1 : 0;
        for (auto const& statement : baby.present) ++seen[statement.finding];
    }
    CHECK(std::abs(static_cast<double>(girls) / babies - 0.5) < 0.02);
    for (auto const* id : {"preauricular-pit", "jitteriness", "cleft-palate", "hip-clunk"}) {
        CAPTURE(id);
        auto const wanted = by_finding({}).at(finding(id)).probability;
        auto const share = static_cast<double>(seen[finding(id)]) / babies;
        CHECK(std::abs(share - wanted) < 5 * std::sqrt(wanted * (1 - wanted) / babies) + 1e-9);
    }
}
