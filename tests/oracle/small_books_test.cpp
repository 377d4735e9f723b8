// SPDX-License-Identifier: MIT
/// Oracle and engine on all small books and all small cases that can tell them apart.
#include "testing.h"

#include <set>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "oracle/case_text.h"
#include "oracle/disputed.h"
#include "oracle/engine.h"
#include "oracle/small_books.h"
#include "oracle/small_world.h"

namespace asterism::oracle {

namespace {

constexpr std::size_t print_every = 97;  ///< held against what `assess` prints
constexpr std::size_t most_failures = 3;

/// Compares the two readers of many books and remembers how much was compared.
class Comparison {
public:
    void book(SmallBook const& small) {
        if (failures_ >= most_failures) return;
        Diagnostics diagnostics;
        auto const subject = oracle::subject(book_from(small.text), small_ontology(), diagnostics);
        if (!subject) {
            ++refused_;
            return;
        }
        ++books_;
        for_each_small_case(small.axes, [&](Case const& baby) { compare(*subject, small, baby); });
    }

    void report() const {
        MESSAGE(
            fmt::format("{} books, {} cases compared, {} distinct answers; {} books refused, {} "
                        "disputed cases left out",
                        books_, cases_, answers_.size(), refused_, disputed_));
        CHECK(failures_ == 0);
    }

    std::size_t cases() const { return cases_; }
    std::size_t answers() const { return answers_.size(); }

private:
    void compare(Subject const& subject, SmallBook const& small, Case const& baby) {
        if (failures_ >= most_failures) return;
        if (disputed(subject, baby)) {
            ++disputed_;
            return;
        }
        ++cases_;
        auto const engine = ask_engine(subject.compiled, baby);
        auto const oracle = subject.oracle->answer(baby, engine.numbers);
        std::string answer;
        for (auto const& service : oracle.services) answer += to_text(service) + "; ";
        answers_.insert(std::move(answer));
        bool agrees = oracle == engine.answer;
        if (agrees && cases_ % print_every == 0)
            agrees = disagreements_in_print(subject, baby).empty();
        if (!agrees) fail(subject, small, baby);
    }

    void fail(Subject const& subject, SmallBook const& small, Case const& baby) {
        ++failures_;
        auto const fails = [&](Case const& c) {
            return !disputed(subject, c) && !disagreements_in_print(subject, c).empty();
        };
        auto const least = shrunk(baby, fails);
        FAIL_CHECK(fmt::format("{}\n{}{}", small.text, case_text(least, *subject.ontology),
                               fmt::join(disagreements_in_print(subject, least), "\n")));
    }

    std::size_t books_ = 0;
    std::size_t refused_ = 0;
    std::size_t cases_ = 0;
    std::size_t disputed_ = 0;
    std::size_t failures_ = 0;
    std::set<std::string> answers_;
};

/// Runs one family of books; the least that it must have compared guards against an empty one.
void compare(void (*books)(VisitBook const&), std::size_t least_cases, std::size_t least_answers) {
    Comparison comparison;
    books([&](SmallBook const& book) { comparison.book(book); });
    comparison.report();
    CHECK(comparison.cases() >= least_cases);
    CHECK(comparison.answers() >= least_answers);
}

}  // namespace

TEST_CASE("every condition of two things") { compare(books_of_pairs, 500000, 15); }
TEST_CASE("every condition of conditions") { compare(books_of_nested_pairs, 500000, 15); }
TEST_CASE("every way of classing three findings") { compare(books_of_classes, 300000, 12); }
TEST_CASE("ways to derive a finding") { compare(books_of_derivations, 100000, 5); }

}  // namespace asterism::oracle
