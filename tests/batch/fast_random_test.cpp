// SPDX-License-Identifier: MIT
/// The fast judge, the engine and the naive evaluator on random babies and the shipped book.
/// ASTERISM_RANDOM_CASES says how many, ASTERISM_SEED which. The naive evaluator takes
/// longer than the others, so it usually judges one case in sixteen; it judges every one when
/// ASTERISM_NAIVE_EVERY=1. The test stops after ASTERISM_RANDOM_SECONDS and says how far it came.
/// A long run:
///     export ASTERISM_RANDOM_CASES=10000000 ASTERISM_RANDOM_SECONDS=100000 ASTERISM_NAIVE_EVERY=1
///     test_batch -tc="fast*"
#include "testing.h"

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <functional>
#include <string>
#include <unordered_set>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "batch/batch_answers.h"
#include "batch/fast_judge.h"
#include "oracle/case_text.h"
#include "oracle/disputed.h"
#include "oracle/engine.h"
#include "oracle/random_cases.h"
#include "oracle/small_books.h"
#include "oracle/small_world.h"

namespace asterism::batch {

namespace {

#ifdef __SANITIZE_ADDRESS__
constexpr std::size_t usual_cases = 5000;
#else
constexpr std::size_t usual_cases = 100000;
#endif
constexpr std::chrono::seconds usual_seconds{45};
constexpr std::size_t usually_naive = 16;
constexpr std::size_t most_failures = 5;

std::string report(oracle::Subject const& subject, Case const& baby, Answers const& fast,
                   Answers const& engine) {
    return fmt::format("{}{}", oracle::case_text(baby, *subject.ontology),
                       fmt::join(differences(*subject.book, fast, engine), "\n"));
}

std::size_t from_environment(char const* name, std::size_t otherwise) {
    auto const* text = std::getenv(name);
    return text ? std::strtoull(text, nullptr, 10) : otherwise;
}

struct Tally {
    std::size_t compared = 0, with_oracle = 0, failures = 0, unsettled = 0, suggested = 0;
    std::unordered_set<std::size_t> distinct;  ///< hashes of texts, for there can be millions

    void note(Rulebook const& book, Answers const& answers) {
        std::string text;
        for (std::size_t i = 0; i < answers.size(); ++i) text += to_text(book, i, answers[i]) + ";";
        distinct.insert(std::hash<std::string>()(text));
        for (auto const& answer : answers) {
            if (answer.verdict == Verdict::unsettled) ++unsettled;
            if (answer.verdict == Verdict::suggested) ++suggested;
        }
    }
};

}  // namespace

TEST_CASE("fast judge, engine and naive evaluator agree on random babies") {
    auto const& subject = oracle::shipped_book();
    FastBook const fast_book(subject.compiled);
    FastJudge judge(fast_book);
    FastCase fast;
    fast.steps = StepSet(subject.ontology->steps.size());
    oracle::CaseMaker maker(subject, oracle::seed_from_environment());
    Tally tally;
    auto const wanted = oracle::cases_from_environment(usual_cases);
    using Clock = std::chrono::steady_clock;
    auto const end = Clock::now() + oracle::seconds_from_environment(usual_seconds);
    auto const every =
        std::max<std::size_t>(from_environment("ASTERISM_NAIVE_EVERY", usually_naive), 1);
    while (tally.compared < wanted && tally.failures < most_failures && Clock::now() < end) {
        auto const baby = maker.make();
        copy(baby, fast);
        auto const answers = judge.judge({&fast, 1}).front();
        auto const engine = engine_answers(subject.compiled, baby);
        ++tally.compared;
        if (tally.compared % 8 == 0) tally.note(*subject.book, answers);
        bool agrees = answers == engine;
        if (agrees && tally.compared % every == 0 && !oracle::disputed(subject, baby)) {
            auto const naive =
                subject.oracle->answer(baby, oracle::numbers_of(subject.compiled, baby));
            agrees = same(answers, naive.services);
            ++tally.with_oracle;
        }
        if (agrees) continue;
        ++tally.failures;
        FAIL_CHECK(report(subject, baby, answers, engine));
    }
    MESSAGE(
        fmt::format("{} of {} cases compared with the engine, {} with the naive evaluator too; of "
                    "one case in eight {} distinct answers, {} suggested, {} unsettled",
                    tally.compared, wanted, tally.with_oracle, tally.distinct.size(),
                    tally.suggested, tally.unsettled));
    CHECK(tally.failures == 0);
    CHECK(tally.distinct.size() > std::min<std::size_t>(tally.compared / 400, 1000));
    CHECK(tally.with_oracle > tally.compared / every / 2);
    CHECK(tally.suggested > 0);
    CHECK(tally.unsettled > 0);
}

}  // namespace asterism::batch
