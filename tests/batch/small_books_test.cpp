// SPDX-License-Identifier: MIT
/// The fast judge and the engine on all small books and all small cases that can tell them apart.
#include "testing.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "batch/batch_answers.h"
#include "batch/fast_judge.h"
#include "oracle/case_text.h"
#include "oracle/small_books.h"
#include "oracle/small_world.h"

namespace asterism::batch {

namespace {

constexpr std::size_t most_failures = 3;

class Comparison {
public:
    void book(oracle::SmallBook const& small) {
        if (failures_ >= most_failures) return;
        Diagnostics diagnostics;
        auto const subject =
            oracle::subject(oracle::book_from(small.text), oracle::small_ontology(), diagnostics);
        if (!subject) return;
        babies_.clear();
        oracle::for_each_small_case(small.axes, [&](Case const& baby) { babies_.push_back(baby); });
        cases_.resize(babies_.size());
        for (std::size_t i = 0; i < babies_.size(); ++i) copy(babies_[i], cases_[i]);
        FastBook const book(subject->compiled);
        FastJudge judge(book);
        auto const answers = judge.judge(cases_);
        for (std::size_t i = 0; i < babies_.size(); ++i)
            compare(*subject, small, babies_[i], answers[i]);
    }

    std::size_t compared() const { return compared_; }

private:
    void compare(oracle::Subject const& subject, oracle::SmallBook const& small, Case const& baby,
                 Answers const& fast) {
        ++compared_;
        auto const engine = engine_answers(subject.compiled, baby);
        if (fast == engine || ++failures_ > most_failures) return;
        FAIL_CHECK(fmt::format("{}\n{}{}", small.text, oracle::case_text(baby, *subject.ontology),
                               fmt::join(differences(*subject.book, fast, engine), "\n")));
    }

    std::vector<Case> babies_;
    std::vector<FastCase> cases_;
    std::size_t compared_ = 0;
    std::size_t failures_ = 0;
};

/// The least that must be compared guards against an empty family.
void compare(void (*books)(oracle::VisitBook const&), std::size_t least) {
    Comparison comparison;
    books([&](oracle::SmallBook const& book) { comparison.book(book); });
    CHECK(comparison.compared() >= least);
}

}  // namespace

TEST_CASE("many at once: every condition of two things") {
    compare(oracle::books_of_pairs, 500000);
}
TEST_CASE("many at once: every condition of conditions") {
    compare(oracle::books_of_nested_pairs, 500000);
}
TEST_CASE("many at once: every way of classing three findings") {
    compare(oracle::books_of_classes, 300000);
}
TEST_CASE("many at once: ways to derive a finding") {
    compare(oracle::books_of_derivations, 100000);
}

}  // namespace asterism::batch
