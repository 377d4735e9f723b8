// SPDX-License-Identifier: MIT
#include "audit/forecast.h"

#include <cmath>
#include <map>
#include <numeric>

#include "audit/poisson_binomial.h"
#include "base/number.h"
#include "batch/fast_judge.h"
#include "support/real_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::audit;

TEST_CASE("a count of equal chances is binomial") {
    // By hand: 10 tosses; C(10,k) / 1024.
    auto const chance = count_distribution(std::vector<double>(10, 0.5));
    double const expected[] = {1, 10, 45, 120, 210, 252, 210, 120, 45, 10, 1};
    for (std::size_t k = 0; k <= 10; ++k) CHECK(chance[k] == doctest::Approx(expected[k] / 1024));
    CHECK(at_least(chance, 0) == doctest::Approx(1));
    CHECK(at_least(chance, 9) == doctest::Approx(11.0 / 1024));
    CHECK(at_least(chance, 11) == 0);
}

TEST_CASE("a count of unequal chances, by listing every outcome") {
    std::vector<double> const p{0.1, 0.25, 0.5, 0.03, 0.9, 0.4, 0, 1};
    std::vector<double> listed(p.size() + 1, 0);
    for (unsigned outcome = 0; outcome < 1u << p.size(); ++outcome) {
        double chance = 1;
        std::size_t count = 0;
        for (std::size_t i = 0; i < p.size(); ++i) {
            bool const happens = (outcome >> i & 1u) != 0;
            chance *= happens ? p[i] : 1 - p[i];
            count += happens ? 1 : 0;
        }
        listed[count] += chance;
    }
    auto const exact = count_distribution(p);
    for (std::size_t k = 0; k < listed.size(); ++k) CHECK(exact[k] == doctest::Approx(listed[k]));
}

TEST_CASE("a paired difference, by hand") {
    // 10 gained and 4 lost of 100: .06 with variance (.14 - .0036) / 100.
    auto const d = paired_difference(10, 4, 100);
    CHECK(d.value == doctest::Approx(.06));
    CHECK(d.high - d.value == doctest::Approx(z95 * std::sqrt(.1364 / 100)));
    CHECK(paired_difference(0, 0, 0).value == 0);
    CHECK(paired_difference(0, 0, 160).high == doctest::Approx(.0234).epsilon(.002));  // 0/160
}

TEST_CASE("simulated minor variants are as many as the exact distribution says") {
    auto const& book = testing::real_book();
    auto const all = frequencies(book, {});
    // Without the findings of the one link, and those of one sex only, everything is independent.
    std::vector<double> chances;
    std::map<FindingId, bool> counted;
    for (auto const& f : all) {
        auto const& id = book.ontology->at(f.finding).id.text;
        bool const linked = id == link_small_baby || id == link_crease;
        bool const both = can_occur(*book.ontology, f.finding, Sex::female) &&
                          can_occur(*book.ontology, f.finding, Sex::male);
        if (!f.minor || linked || !both) continue;
        chances.push_back(f.probability);
        counted[f.finding] = true;
    }
    REQUIRE(chances.size() > 50);
    auto const exact = count_distribution(chances);
    constexpr int babies = 40000;
    std::vector<int> seen(exact.size(), 0);
    Newborns newborns(book, NewbornModel{}, 20310402);
    for (int i = 0; i < babies; ++i) {
        std::size_t count = 0;
        for (auto const& s : newborns.next().present) count += counted.count(s.finding);
        ++seen[count];
    }
    for (std::size_t least = 1; least <= 4; ++least) {
        double const p = at_least(exact, least);
        double const share =
            std::accumulate(seen.begin() + static_cast<std::ptrdiff_t>(least), seen.end(), 0.0) /
            babies;
        CAPTURE(least);
        // Five standard errors: wrong by chance once in a million runs, and the seed is fixed.
        CHECK(std::abs(share - p) < 5 * std::sqrt(p * (1 - p) / babies));
    }
}

TEST_CASE("a forecast is what the engine says of the same babies") {
    auto const& book = testing::real_book();
    constexpr std::uint64_t samples = 300;
    auto const told = forecast(book, &book, NewbornModel{}, samples, 7);
    Newborns newborns(book, NewbornModel{}, 7);
    std::vector<std::uint64_t> suggested(told.services.size(), 0);
    std::uint64_t any = 0;
    for (std::uint64_t i = 0; i < samples; ++i) {
        auto const answers = batch::engine_answers(book, newborns.next());
        for (std::size_t k = 0; k < answers.size(); ++k)
            suggested[k] += answers[k].verdict == Verdict::suggested ? 1 : 0;
        any += highest_urgency(answers) ? 1 : 0;
    }
    CHECK(told.samples == samples);
    CHECK(told.any.suggested == any);
    CHECK(any > 0);
    for (std::size_t k = 0; k < suggested.size(); ++k) {
        auto const& service = told.services[k];
        CHECK(service.suggested == suggested[k]);
        CHECK(std::accumulate(service.by_urgency.begin(), service.by_urgency.end(),
                              std::uint64_t{0}) == service.suggested);
        CHECK(service.before == service.suggested);  // against itself nothing changes
        CHECK(service.gained + service.lost == 0);
    }
}
