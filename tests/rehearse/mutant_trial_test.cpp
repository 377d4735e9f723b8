// SPDX-License-Identifier: MIT
// Mutants of small books whose fate follows by hand.
#include "review/mutant_trial.h"

#include "review/rehearse.h"
#include "support/small_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

std::string vignette(std::string const& id, std::string const& findings, std::string const& expect,
                     std::string const& more = "sources: [s]") {
    return "  - { vignette: " + id + ", story: x., case: { examined: all, findings: " + findings +
           " }, expect: " + expect + ", " + more + " }\n";
}

CompiledRulebook book(std::string const& rules, std::string const& vignettes) {
    auto loaded = load(small_book_head + "rules:\n" + rules +
                       (vignettes.empty() ? "vignettes: []\n" : "vignettes:\n" + vignettes));
    for (auto const& one : loaded.diagnostics.sorted()) MESSAGE(one.message);
    REQUIRE(loaded.book);
    return std::move(*loaded.book);
}

Trial tried(CompiledRulebook const& book, TrialOptions options = {}) {
    Diagnostics diagnostics;
    auto const vignettes = read_vignettes(book, diagnostics);
    REQUIRE_FALSE(diagnostics.has_errors());
    return try_mutants(book, vignettes, options);
}

/// The only mutant of this part with this edit.
TriedMutant const& one(Trial const& trial, std::string const& part, std::string const& what) {
    TriedMutant const* found = nullptr;
    for (auto const& each : trial.tried) {
        if (each.mutant.part != part || each.mutant.what != what) continue;
        CHECK(found == nullptr);
        found = &each;
    }
    CAPTURE(part);
    CAPTURE(what);
    REQUIRE(found != nullptr);
    return *found;
}

std::string const two = rule("two", "{ tally: minors, at-least: 2 }", "genetics", "urgent");
std::string const says_two =
    "{ referrals: { genetics: { verdict: suggested, urgency: urgent, by: [two] } } }";

}  // namespace

TEST_CASE("a threshold needs a baby on it and one just short of it") {
    auto const on = vignette("on", "[slant, crease]", says_two);
    auto const under = vignette("under", "[slant]", "{ referrals: {} }");
    auto const only_on = tried(book(two, on));
    CHECK(one(only_on, "two", "3 instead of 2").fate == MutantFate::killed);
    CHECK(one(only_on, "two", "1 instead of 2").fate == MutantFate::survived);
    auto const both = tried(book(two, on + under));
    CHECK(one(both, "two", "1 instead of 2").fate == MutantFate::killed);
    CHECK(one(both, "two", "1 instead of 2").vignette == "under");
}

TEST_CASE("service and urgency count as noticed only when a vignette states them") {
    auto const trial = tried(book(two, vignette("v", "[slant, crease]", says_two)));
    for (auto const* what :
         {"ophthalmology instead of genetics", "genetics routine instead of urgent",
          "genetics same-day instead of urgent"})
        CHECK(one(trial, "two", what).fate == MutantFate::killed);
    auto const vague = tried(
        book(two, vignette("v", "[slant, crease]", "{ referrals: { genetics: suggested } }")));
    CHECK(one(vague, "two", "genetics routine instead of urgent").fate == MutantFate::survived);
}

namespace {

/// What becomes of leaving out each of two ways to reach a rule.
std::vector<TriedMutant> without_each_way(std::string const& ways, std::string const& finding) {
    auto const needless = rule("seen", "{ any: [ " + ways + " ] }", "genetics", "urgent");
    auto const says =
        "{ referrals: { genetics: { verdict: suggested, urgency: urgent, by: [seen] } } }";
    std::vector<TriedMutant> dropped;
    for (auto const& each : tried(book(needless, vignette("v", finding, says))).tried) {
        if (each.mutant.part == "seen" && each.mutant.kind == MutantKind::dropped)
            dropped.push_back(each);
    }
    REQUIRE(dropped.size() == 2);
    return dropped;
}

}  // namespace

TEST_CASE("a condition that another implies is proven equivalent") {
    // Every cloudy lens is a lens sign: leaving `cloudy` out changes nothing.
    auto const dropped = without_each_way("{ present: lens }, { present: cloudy }", "[lens]");
    CHECK(dropped[0].fate == MutantFate::killed);
    CHECK(dropped[1].fate == MutantFate::equivalent);
    CHECK(dropped[1].method.find("every baby") != std::string::npos);
    CHECK(dropped[1].killer.empty());
}

TEST_CASE("what is alike by single rules only is not called equivalent") {
    // The same of an opaque lens, but "cloudy or opaque" is also what decides whether the lids
    // count, and the engine holds that either way while it is open.
    auto const dropped = without_each_way("{ present: cloudy }, { present: opaque }", "[cloudy]");
    CHECK(dropped[0].fate == MutantFate::killed);
    CHECK(dropped[1].fate == MutantFate::survived);
    CHECK(dropped[1].method.find("count is left open") != std::string::npos);
}

TEST_CASE("a solver that may not think proves nothing: the mutant survives") {
    auto const trial = [] {
        TrialOptions options;
        options.limits = {0, std::chrono::milliseconds(0)};
        return tried(book(two, ""), options);
    };
    auto const found = trial();
    CHECK(found.count(MutantFate::killed) == 0);
    CHECK(one(found, "two", "1 instead of 2").fate == MutantFate::survived);
}

TEST_CASE("a survivor comes with a vignette that kills it once it has a source") {
    auto const start = vignette("on", "[slant, crease]", says_two);
    auto const before = tried(book(two, start));
    auto const& survivor = one(before, "two", "1 instead of 2");
    REQUIRE(survivor.fate == MutantFate::survived);
    REQUIRE_FALSE(survivor.killer.empty());
    auto const unsourced = book(two, start + survivor.killer);
    Diagnostics diagnostics;
    auto const rehearsal = rehearse_all(unsourced, diagnostics);
    CHECK(rehearsal.vignettes.back().generated);
    CHECK(rehearsal.failures.back().empty());
    CHECK(one(tried(unsourced), "two", "1 instead of 2").fate == MutantFate::survived);
    auto sourced = survivor.killer;
    sourced.replace(sourced.find("sources: []"), 11, "sources: [s]");
    CHECK(one(tried(book(two, start + sourced)), "two", "1 instead of 2").fate ==
          MutantFate::killed);
}

TEST_CASE("a moved class is noticed by a vignette that names the class") {
    auto const named =
        vignette("v", "[opaque]", "{ referrals: not-compared, classes: { opaque: red-flag } }");
    auto const trial = tried(book(two, named));
    CHECK(one(trial, "opaque", "major-anomaly instead of red-flag").fate == MutantFate::killed);
    auto const without = tried(book(two, ""));
    CHECK(one(without, "opaque", "major-anomaly instead of red-flag").fate == MutantFate::survived);
    CHECK_FALSE(one(without, "opaque", "major-anomaly instead of red-flag").killer.empty());
}

TEST_CASE("merged fields are noticed by a baby with one finding of each") {
    auto const each =
        vignette("v", "[slant, crease]", "{ referrals: not-compared, tallies: { minors: 2 } }");
    CHECK(one(tried(book(two, each)), "lids", "merged with hands").fate == MutantFate::killed);
    CHECK(one(tried(book(two, "")), "lids", "merged with hands").fate == MutantFate::survived);
}

TEST_CASE("an edit that the loader refuses counts towards no total") {
    auto const trial =
        tried(book(rule("both", "{ at-least: 2, of: [ { present: slant }, { present: crease } ] }",
                        "genetics", "urgent"),
                   ""));
    CHECK(one(trial, "both", "3 instead of 2").fate == MutantFate::refused);
    CHECK(trial.total() == trial.count(MutantFate::killed) + trial.count(MutantFate::equivalent) +
                               trial.count(MutantFate::survived));
}

TEST_CASE("a sample is drawn by its seed and judged alike by any number of threads") {
    auto const loaded = book(two, vignette("v", "[slant, crease]", says_two));
    auto const places = [&](std::uint64_t seed, unsigned jobs) {
        TrialOptions options;
        options.sample = 10;
        options.seed = seed;
        options.jobs = jobs;
        std::vector<std::string> result;
        for (auto const& each : tried(loaded, options).tried)
            result.push_back(each.mutant.part + each.mutant.what + std::string(to_text(each.fate)) +
                             each.killer);
        return result;
    };
    CHECK(places(1, 1).size() == 10);
    CHECK(places(1, 1) == places(1, 3));
    CHECK(places(1, 1) != places(2, 1));
}
