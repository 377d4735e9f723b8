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
#include <array>
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

namespace {

/// Compares random babies, judged some at a time, one by one.
class Comparison {
public:
    explicit Comparison(oracle::Subject const& subject)
        : subject_(subject),
          book_(subject.compiled),
          judge_(book_),
          maker_(subject, oracle::seed_from_environment()) {}

    void compare(std::size_t cases) {
        babies_.clear();
        fast_.resize(cases);
        for (auto& fast : fast_) copy(babies_.emplace_back(maker_.make()), fast);
        auto const answers = judge_.judge(fast_);
        for (std::size_t i = 0; i < cases && tally_.failures < most_failures; ++i)
            compare(babies_[i], answers[i]);
    }

    Tally const& tally() const { return tally_; }

    /// The naive evaluator judges one case in so many.
    std::size_t const every =
        std::max<std::size_t>(from_environment("ASTERISM_NAIVE_EVERY", usually_naive), 1);

private:
    void compare(Case const& baby, Answers const& answers) {
        auto const engine = engine_answers(subject_.compiled, baby);
        ++tally_.compared;
        if (tally_.compared % 8 == 0) tally_.note(*subject_.book, answers);
        if (answers == engine && (tally_.compared % every != 0 || naive_agrees(baby, answers)))
            return;
        ++tally_.failures;
        FAIL_CHECK(report(subject_, baby, answers, engine));
    }

    bool naive_agrees(Case const& baby, Answers const& answers) {
        if (oracle::disputed(subject_, baby)) return true;
        ++tally_.with_oracle;
        auto const numbers = oracle::numbers_of(subject_.compiled, baby);
        return same(answers, subject_.oracle->answer(baby, numbers).services);
    }

    oracle::Subject const& subject_;
    FastBook book_;
    FastJudge judge_;
    oracle::CaseMaker maker_;
    std::vector<Case> babies_;
    std::vector<FastCase> fast_;
    Tally tally_;
};

}  // namespace

TEST_CASE("fast judge, engine and naive evaluator agree on random babies") {
    Comparison comparison(oracle::shipped_book());
    auto const& tally = comparison.tally();
    auto const wanted = oracle::cases_from_environment(usual_cases);
    using Clock = std::chrono::steady_clock;
    auto const end = Clock::now() + oracle::seconds_from_environment(usual_seconds);
    // One alone, groups that fill lanes in part, just and more than once.
    static constexpr std::array<std::size_t, 7> groups{
        1, 3, 64, Lanes::count, Lanes::count + 1, 2 * Lanes::count, 700};
    for (std::size_t i = 0;
         tally.compared < wanted && tally.failures < most_failures && Clock::now() < end; ++i)
        comparison.compare(std::min(groups[i % groups.size()], wanted - tally.compared));
    MESSAGE(
        fmt::format("{} of {} cases compared with the engine, {} with the naive evaluator too; of "
                    "one case in eight {} distinct answers, {} suggested, {} unsettled",
                    tally.compared, wanted, tally.with_oracle, tally.distinct.size(),
                    tally.suggested, tally.unsettled));
    CHECK(tally.failures == 0);
    CHECK(tally.distinct.size() > std::min<std::size_t>(tally.compared / 400, 1000));
    CHECK(tally.with_oracle > tally.compared / comparison.every / 2);
    CHECK(tally.suggested > 0);
    CHECK(tally.unsettled > 0);
}

}  // namespace asterism::batch
