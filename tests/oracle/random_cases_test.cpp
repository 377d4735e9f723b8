// SPDX-License-Identifier: MIT
/// Oracle and engine on random babies and the shipped book. ASTERISM_RANDOM_CASES says how many,
/// ASTERISM_SEED which.
#include "testing.h"

#include <functional>
#include <unordered_set>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "oracle/case_text.h"
#include "oracle/disputed.h"
#include "oracle/engine.h"
#include "oracle/random_cases.h"

namespace asterism::oracle {

namespace {

#ifdef __SANITIZE_ADDRESS__
constexpr std::size_t usual_cases = 2000;  ///< each takes many times as long
#else
constexpr std::size_t usual_cases = 100000;
#endif
constexpr std::size_t print_every = 50;  ///< `assess` explains at length: its print is slow to make
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

    void note(Case const& baby, Answer const& answer) {
        std::string text;
        for (auto const& service : answer.services) text += to_text(service) + ";";
        answers_.insert(std::hash<std::string>()(text));
        auto const facts = evaluate(subject_.compiled, baby, Rest::unknown);
        for (std::size_t i = 0; i < subject_.compiled.rules.size(); ++i) {
            auto const& literal = subject_.compiled.rules[i].when.literal;
            if (value_of(literal, facts.values) == Truth::yes) rules_.insert(i);
        }
    }

    std::size_t answers() const { return answers_.size(); }
    std::size_t rules() const { return rules_.size(); }

private:
    Subject const& subject_;
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
    std::size_t compared = 0, left_out = 0, failures = 0;
    while (compared < wanted && failures < most_failures) {
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
        reach.note(baby, engine.answer);
        if (agrees) continue;
        ++failures;
        FAIL_CHECK(report(subject, baby, compared));
    }
    MESSAGE(fmt::format(
        "seed {}: {} random cases compared, {} disputed ones left out; "
        "{} distinct answers, {} of {} rules were true in some",
        seed, compared, left_out, reach.answers(), reach.rules(), subject.compiled.rules.size()));
    CHECK(failures == 0);
    // The rarest rules need many babies; most must be reached by any usual number of them.
    if (compared >= 20000) CHECK(reach.rules() * 10 >= subject.compiled.rules.size() * 9);
}

}  // namespace asterism::oracle
