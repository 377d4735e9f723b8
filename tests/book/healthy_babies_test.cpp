// SPDX-License-Identifier: MIT
// How often the book's counting speaks up in healthy babies.
//
// 100,000 babies are drawn from ontology/prevalences and judged with everything examined. A minor
// variant without a row gets the stated default of 20 per 10,000, a project choice. Nothing
// published gives it: the mean of the lower half of the published rows, printed below, is three
// times as much, but rows exist for what is common enough to be counted, and some 280 variants at
// that mean would leave hardly a baby without one. Even so 20 is on the high side, since the rows
// alone exceed the series below. The tables say what follows from other choices.
//
// Comparison: Marden PM, Smith DW, McDonald MJ, J Pediatr 1964;64:357-371, as quoted in a textbook
// chapter (secondary): one minor anomaly about 14 %, two 0.8 %, three or more 0.5 % of newborns.
#include "healthy_babies.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <span>
#include <string>

#include <fmt/format.h>

#include "assess/facts.h"
#include "assess/verdicts.h"
#include "shipped_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

constexpr double stated_default = 20;  // per 10,000
constexpr std::size_t babies = 100000;
constexpr std::uint64_t seed = 19640364;
constexpr double goal_percent = 3;
constexpr double marden_one = 0.14, marden_two = 0.008, marden_three = 0.005;

struct Study {
    std::vector<std::size_t> by_count;  ///< babies by number of independent minor variants
    std::size_t genetics = 0;
    std::size_t genetics_without_counting = 0;
    std::map<std::string, std::size_t> rules;  ///< babies by rule that suggests genetics
};

ServiceId service(CompiledRulebook const& book, std::string_view id) {
    auto const& services = book.book->services;
    auto const found = std::find_if(services.begin(), services.end(),
                                    [&](Service const& s) { return s.id.text == id; });
    REQUIRE(found != services.end());
    return static_cast<ServiceId>(found - services.begin());
}

CompiledTally const& tally(CompiledRulebook const& book, std::string_view id) {
    auto const found = std::find_if(book.tallies.begin(), book.tallies.end(),
                                    [&](CompiledTally const& t) { return t.id == id; });
    REQUIRE(found != book.tallies.end());
    return *found;
}

bool by_counting(std::string const& rule) {
    return rule == "three-independent-minor-variants" || rule == "one-major-two-minor" ||
           rule == "two-major-anomalies";
}

void add(CompiledRulebook const& book, CaseFacts const& facts, ServiceId genetics, Study& study) {
    auto const values = std::span<Truth const>(facts.values);
    if (verdicts(book, values)[genetics].verdict != Verdict::suggested) return;
    ++study.genetics;
    bool other = false;
    for (auto const rule : deciding_rules(book, values, genetics)) {
        auto const& name = book.syntax(book.rules[rule]).id.text;
        ++study.rules[name];
        other = other || !by_counting(name);
    }
    study.genetics_without_counting += other ? 1 : 0;
}

Study simulate(std::vector<Frequency> const& drawn) {
    auto const& book = shipped_book();
    auto const genetics = service(book, "genetics");
    auto const& minors = tally(book, "minor-variants");
    Newborns maker(book, drawn, seed);
    Study study;
    for (std::size_t i = 0; i < babies; ++i) {
        auto const baby = maker.next();
        auto const facts = evaluate(book, baby, Rest::unknown);
        auto const count = static_cast<std::size_t>(sum(minors.inputs, facts.counted).low / 10);
        study.by_count.resize(std::max(study.by_count.size(), count + 1), 0);
        ++study.by_count[count];
        add(book, facts, genetics, study);
    }
    return study;
}

Study const& study_with_stated_default() {
    static auto const study = simulate(frequencies(shipped_book(), stated_default));
    return study;
}

Study const& study_of_rows_alone() {
    static auto const study = simulate(frequencies(shipped_book(), 0));
    return study;
}

double share(std::size_t part) { return static_cast<double>(part) / static_cast<double>(babies); }

double share_from(Study const& study, std::size_t at_least) {
    std::size_t total = 0;
    for (std::size_t n = at_least; n < study.by_count.size(); ++n) total += study.by_count[n];
    return share(total);
}

/// The default at which so large a share of babies has three or more independent minor variants.
double default_that_gives(double wanted) {
    auto const& book = shipped_book();
    double low = 0, high = stated_default;
    for (int i = 0; i < 30; ++i) {
        auto const middle = (low + high) / 2;
        auto const three = tail(exact_minor_counts(book, frequencies(book, middle)), 3);
        (three < wanted ? low : high) = middle;
    }
    return low;
}

std::string line(std::string_view label, double one_or_more, double two, double three) {
    return fmt::format("{:<58} {:>6.2f} {:>6.2f} {:>6.2f}\n", label, 100 * one_or_more, 100 * two,
                       100 * three);
}

std::string line(std::string_view label, std::vector<double> const& exact) {
    return line(label, tail(exact, 1), exact[2], tail(exact, 3));
}

double mean_of_lower_half(std::vector<double> const& rows) {
    auto const half = static_cast<std::ptrdiff_t>(rows.size() / 2);
    return std::accumulate(rows.begin(), rows.begin() + half, 0.0) / static_cast<double>(half);
}

double expected_findings(std::vector<Frequency> const& drawn, FrequencyFrom from) {
    double total = 0;
    for (auto const& frequency : drawn) {
        if (frequency.minor && frequency.from == from) total += frequency.probability;
    }
    return total;
}

std::size_t number_of(std::vector<Frequency> const& drawn, FrequencyFrom from) {
    return static_cast<std::size_t>(std::count_if(
        drawn.begin(), drawn.end(), [&](auto const& f) { return f.minor && f.from == from; }));
}

/// Where the expected number of minor variants comes from.
std::string explanation(std::vector<Frequency> const& drawn) {
    auto const rows = published_minor_rows(shipped_book());
    auto text = fmt::format(
        "\nbedside minor variants: {} with a row (lower half of the rows: mean {:.1f} per 10,000), "
        "{} at the default of {}\n",
        rows.size(), mean_of_lower_half(rows), number_of(drawn, FrequencyFrom::minor_default),
        stated_default);
    text += fmt::format("expected findings a baby: {:.2f} from rows, {:.2f} from the default\n",
                        expected_findings(drawn, FrequencyFrom::row) +
                            expected_findings(drawn, FrequencyFrom::rest_of_row),
                        expected_findings(drawn, FrequencyFrom::minor_default));
    return text;
}

std::string why_over_goal(double genetics) {
    if (100 * genetics <= goal_percent) return {};
    return fmt::format(
        "The goal of {} % is missed with the default of {} per 10,000. Over half of all variants "
        "drawn are ones that nobody\ncounted: each may be rarer than the default, and all of them "
        "together make more than any series of newborns found.\nThe rows add sizes beyond two "
        "standard deviations and skin marks, which older lists did not count. No variant was\n"
        "left out to make the share smaller.\n",
        goal_percent, stated_default);
}

std::string table_of_genetics(std::string_view label, Study const& study) {
    auto text = fmt::format(
        "\nreaching genetics, {}: {:.2f} % of {} healthy babies; goal {} %; by a rule other than "
        "counting {:.2f} %\n",
        label, 100 * share(study.genetics), babies, goal_percent,
        100 * share(study.genetics_without_counting));
    for (auto const& [rule, count] : study.rules) {
        text += fmt::format("  {:<50} {:>6.3f} %\n", rule, 100 * share(count));
    }
    return text;
}

}  // namespace

TEST_CASE("rows count their kinds, and sexes get only what they can have") {
    auto const& book = shipped_book();
    auto const drawn = frequencies(book, stated_default);
    std::map<FindingId, Frequency> by_id;
    for (auto const& frequency : drawn) by_id[frequency.finding] = frequency;

    CHECK(by_id.at(finding("preauricular-pit")).probability == doctest::Approx(0.0070));
    CHECK(by_id.at(finding("sandal-gap")).probability == doctest::Approx(0.0020));
    // 330 per 10,000 with a single crease, 20 of them on both sides.
    CHECK(by_id.at(finding("single-transverse-palmar-crease")).probability ==
          doctest::Approx(0.0310));
    CHECK(by_id.count(finding("cataract")) == 0);
    CHECK(by_id.count(finding("duplex-kidney")) == 0);  // seen on a scan
    CHECK(by_id.count(finding("microcephaly")) == 1);   // 2.3 % by definition

    Newborns maker(book, drawn, seed);
    for (int i = 0; i < 2000; ++i) {
        auto const baby = maker.next();
        for (auto const& statement : baby.present) {
            auto const only = book.ontology->at(statement.finding).sex;
            CHECK((only == Sex::not_given || only == baby.sex));
        }
    }
}

TEST_CASE("the exact distribution is that of a sum of independent keys") {
    auto const exact = exact_minor_counts(shipped_book(), frequencies(shipped_book(), 0.0));
    CHECK(tail(exact, 0) == doctest::Approx(1));
    double none = 1;  // by hand, girls and boys, without the one link between findings
    auto const drawn = frequencies(shipped_book(), 0.0);
    double girls = 1, boys = 1;
    for (auto const& frequency : drawn) {
        if (!frequency.minor) continue;
        auto const only = shipped_book().ontology->at(frequency.finding).sex;
        if (only != Sex::male) girls *= 1 - frequency.probability;
        if (only != Sex::female) boys *= 1 - frequency.probability;
    }
    none = (girls + boys) / 2;
    CHECK(exact[0] == doctest::Approx(none).epsilon(0.001));
}

TEST_CASE("simulated counts of independent minor variants follow the exact distribution") {
    auto const& study = study_with_stated_default();
    auto const exact =
        exact_minor_counts(shipped_book(), frequencies(shipped_book(), stated_default));
    for (std::size_t n = 0; n < 6; ++n) {
        CAPTURE(n);
        REQUIRE(n < study.by_count.size());
        auto const error = std::sqrt(exact[n] * (1 - exact[n]) / babies);
        CHECK(std::abs(share(study.by_count[n]) - exact[n]) < 5 * error);
    }
}

TEST_CASE("healthy babies with minor variants, beside the published series") {
    auto const& book = shipped_book();
    auto const& study = study_with_stated_default();
    auto const drawn = frequencies(book, stated_default);
    auto const rows = published_minor_rows(book);
    auto const fitted = default_that_gives(goal_percent / 100);
    auto const exact = [&](double each) {
        return exact_minor_counts(book, frequencies(book, each));
    };

    fmt::print("\n{:<58} {:>6} {:>6} {:>6}\n", "independent minor variants, % of healthy babies",
               ">= 1", "2", ">= 3");
    fmt::print("{}", line("Marden 1964 (1: 14, 2: 0.8, 3 or more: 0.5)",
                          marden_one + marden_two + marden_three, marden_two, marden_three));
    fmt::print("{}", line(fmt::format("simulated, default {} per 10,000", stated_default),
                          share_from(study, 1), share(study.by_count[2]), share_from(study, 3)));
    fmt::print("{}", line("the same, exact", exact(stated_default)));
    fmt::print("{}", line("exact, published rows alone", exact(0)));
    fmt::print("{}", line(fmt::format("exact, default {:.1f}", fitted), exact(fitted)));
    fmt::print("{}", line("exact, default at the mean of the lower half of the rows",
                          exact(mean_of_lower_half(rows))));
    fmt::print("{}", explanation(drawn));

    CHECK(rows.size() >= 20);
    CHECK(share_from(study, 1) > marden_one);
    CHECK(share_from(study, 3) > 0);
    CHECK(share_from(study, 3) < 0.25);
}

TEST_CASE("healthy babies who reach genetics") {
    auto const& study = study_with_stated_default();
    auto const& rows_alone = study_of_rows_alone();
    fmt::print("{}{}{}", table_of_genetics("default for uncounted variants", study),
               table_of_genetics("published rows alone", rows_alone),
               why_over_goal(share(study.genetics)));
    CHECK(share(study.genetics) >= share_from(study, 3));
    CHECK(share(rows_alone.genetics) >= share_from(rows_alone, 3));
    CHECK(share(rows_alone.genetics) < share(study.genetics));
    CHECK(share(study.genetics) < 0.20);
}
