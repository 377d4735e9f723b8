// SPDX-License-Identifier: MIT
/// Oracle and engine on random babies and the shipped book. ASTERISM_RANDOM_CASES says how many,
/// ASTERISM_SEED which. ASTERISM_RANDOM_SECONDS ends a run earlier, if given. The last line says
/// how many were compared. A long run:
///     ASTERISM_SEED=1 ASTERISM_RANDOM_CASES=10000000 test_oracle -tc="oracle and engine agree*"
#include "testing.h"

#include <chrono>
#include <functional>
#include <unordered_set>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "oracle/case_text.h"
#include "oracle/disputed.h"
#include "oracle/engine.h"
#include "oracle/faulty_book.h"
#include "oracle/random_cases.h"
#include "oracle/small_world.h"

namespace asterism::oracle {

namespace {

#ifdef __SANITIZE_ADDRESS__
constexpr std::size_t usual_cases = 2000;  ///< each takes many times as long
#else
constexpr std::size_t usual_cases = 100000;
#endif
constexpr std::size_t print_every = 50;  ///< `assess` explains at length: its print is slow to make
using Clock = std::chrono::steady_clock;
constexpr std::chrono::seconds usual_seconds{1000000};
constexpr std::size_t settled_cases = 2000;
constexpr std::size_t answers_every = 8;  ///< looked at to see how many distinct ones there are
constexpr std::size_t most_failures = 5;

/// The smallest case that fails the same way, and how.
std::string report(Subject const& subject, Case const& baby, std::size_t number) {
    auto const small = shrunk(baby, [&](Case const& c) {
        return !disputed(subject, c) && !disagreements_in_print(subject, c).empty();
    });
    return fmt::format("case {}, made smaller:\n{}{}", number, case_text(small, *subject.ontology),
                       fmt::join(disagreements_in_print(subject, small), "\n"));
}

/// How much of the book the random babies reached, so that an agreement about nothing is seen.
class Reach {
public:
    explicit Reach(Subject const& subject) : subject_(subject) {}

    void note(EngineAnswer const& engine) {
        if (noted_++ % answers_every == 0) note_services(engine.answer);
        for (std::size_t i = 0; i < subject_.compiled.rules.size(); ++i) {
            auto const& literal = subject_.compiled.rules[i].when.literal;
            if (value_of(literal, engine.values) == Truth::yes) rules_.insert(i);
        }
    }

    std::size_t answers() const { return answers_.size(); }
    std::size_t rules() const { return rules_.size(); }

private:
    void note_services(Answer const& answer) {
        std::string text;
        for (auto const& service : answer.services) text += to_text(service) + ";";
        answers_.insert(std::hash<std::string>()(text));
    }

    Subject const& subject_;
    std::size_t noted_ = 0;
    std::unordered_set<std::size_t> answers_;
    std::unordered_set<std::size_t> rules_;
};

}  // namespace

TEST_CASE("oracle and engine agree on random babies and the shipped book") {
    auto const& subject = shipped_book();
    auto const seed = seed_from_environment();
    auto const wanted = cases_from_environment(usual_cases);
    CaseMaker maker(subject, seed);
    Reach reach(subject);
    auto const end = Clock::now() + seconds_from_environment(usual_seconds);
    std::size_t compared = 0, left_out = 0, failures = 0;
    while (compared < wanted && failures < most_failures && Clock::now() < end) {
        auto const baby = maker.make();
        if (disputed(subject, baby)) {
            ++left_out;
            continue;
        }
        ++compared;
        auto const engine = ask_engine(subject.compiled, baby);
        bool agrees = subject.oracle->answer(baby, engine.numbers) == engine.answer;
        if (agrees && compared % print_every == 0)
            agrees = disagreements_in_print(subject, baby).empty();
        reach.note(engine);
        if (agrees) continue;
        ++failures;
        FAIL_CHECK(report(subject, baby, compared));
    }
    MESSAGE(
        fmt::format("seed {}: {} of {} random cases compared, {} disputed ones left out; "
                    "of one case in eight {} distinct answers, {} of {} rules were true in some",
                    seed, compared, wanted, left_out, reach.answers(), reach.rules(),
                    subject.compiled.rules.size()));
    CHECK(failures == 0);
    // The rarest rules need many babies; most must be reached by any usual number of them.
    if (compared >= 20000) CHECK(reach.rules() * 10 >= subject.compiled.rules.size() * 9);
}

TEST_CASE("asking settled rules again makes no difference to the oracle's answer") {
    std::size_t asked = 0, unsettled = 0;
    auto const same = [&](Subject const& subject, Case const& baby) {
        auto const numbers = numbers_of(subject.compiled, baby);
        auto const answer = subject.oracle->answer(baby, numbers);
        ++asked;
        for (auto const& service : answer.services) unsettled += service.verdict == "unsettled";
        return answer == subject.oracle->answer(baby, numbers, Asking::all_rules);
    };
    CaseMaker maker(shipped_book(), seed_from_environment());
    bool agrees = true;
    for (std::size_t i = 0; i < settled_cases && agrees; ++i)
        agrees = same(shipped_book(), maker.make());
    CHECK(agrees);
    for_each_small_case({"ear", "low-ear", "crease", "chin", "steps"}, [&](Case const& baby) {
        agrees = agrees && same(book_to_plant_faults_in(), baby);
    });
    CHECK(agrees);
    CHECK(asked > settled_cases + 1000);
    CHECK(unsettled > settled_cases);
}

}  // namespace asterism::oracle
