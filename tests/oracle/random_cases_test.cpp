// SPDX-License-Identifier: MIT
/// Oracle and engine on random babies and the shipped book.
#include "testing.h"

#include <chrono>
#include <map>
#include <set>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "oracle/case_text.h"
#include "oracle/disputed.h"
#include "oracle/random_cases.h"

namespace asterism::oracle {

namespace {

constexpr std::size_t usual_cases = 20000;
constexpr std::size_t print_every = 50;  ///< `assess` explains at length; the bulk is read off the circuit
constexpr std::size_t most_failures = 5;

/// The smallest case that fails the same way, and how.
std::string report(Subject const& subject, Case const& baby, std::size_t number) {
    auto const small = shrunk(
        baby, [&](Case const& c) { return !disputed(subject, c) && !disagreements_in_print(subject, c).empty(); });
    return fmt::format("case {}, made smaller:\n{}{}", number, case_text(small, *subject.ontology),
                       fmt::join(disagreements_in_print(subject, small), "\n"));
}

}  // namespace

TEST_CASE("oracle and engine agree on random babies and the shipped book") {
    auto const& subject = shipped_book();
    auto const seed = seed_from_environment();
    auto const wanted = cases_from_environment(usual_cases);
    CaseMaker maker(subject, seed);
    std::size_t failures = 0;
    std::size_t left_out = 0;
    for (std::size_t i = 0; i < wanted && failures < most_failures; ++i) {
        auto const baby = maker.make();
        if (disputed(subject, baby)) {
            ++left_out;
            continue;
        }
        auto const lines = i % print_every == 0 ? disagreements_in_print(subject, baby)
                                                : disagreements(subject, baby);
        if (lines.empty()) continue;
        ++failures;
        FAIL_CHECK(report(subject, baby, i));
    }
    CHECK(failures == 0);
    MESSAGE(fmt::format("seed {}: {} random cases compared, {} disputed ones left out", seed, wanted - left_out, left_out));
}

}  // namespace asterism::oracle
