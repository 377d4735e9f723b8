// SPDX-License-Identifier: MIT
/// Learning more never flips what is settled.
#include "testing.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "oracle/case_text.h"
#include "oracle/engine.h"
#include "oracle/learning.h"
#include "oracle/small_books.h"
#include "oracle/small_world.h"

namespace asterism::oracle {

namespace {

constexpr std::size_t usual_cases = 20000;
constexpr std::size_t most_failures = 3;
constexpr std::size_t small_stride = 5;  ///< of the small cases, every fifth

/// Learns one thing after the other and counts what was held together.
class Pupil {
public:
    explicit Pupil(std::uint64_t seed) : dice_(seed) {}

    /// Takes up to so many steps from a case.
    void learn(Subject const& subject, Case baby, std::size_t steps) {
        for (std::size_t step = 0; step < steps && failures_ < most_failures; ++step) {
            auto const more = learn_one_thing(subject, baby, dice_);
            if (!more) continue;
            auto const before = evaluate(subject.compiled, baby, Rest::unknown);
            auto const after = evaluate(subject.compiled, *more, Rest::unknown);
            if (amends_by_measure(subject, before, after)) {
                ++amendments_;
                continue;
            }
            ++learned_;
            compare(subject, baby, *more, before, after);
            baby = *more;
        }
    }

    void report(std::size_t least) const {
        MESSAGE(fmt::format("{} things learned, {} amendments by a measure left out", learned_,
                            amendments_));
        CHECK(failures_ == 0);
        CHECK(learned_ >= least);
    }

    bool may_go_on() const { return failures_ < most_failures; }

private:
    void compare(Subject const& subject, Case const& baby, Case const& more,
                 CaseFacts const& before, CaseFacts const& after) {
        auto const& book = subject.compiled;
        auto const lines = flips(subject, read_off(book, before.values, before.values),
                                 read_off(book, after.values, after.values));
        if (lines.empty()) return;
        ++failures_;
        FAIL_CHECK(fmt::format("before:\n{}after:\n{}{}", case_text(baby, *subject.ontology),
                               case_text(more, *subject.ontology), fmt::join(lines, "\n")));
    }

    Dice dice_;
    std::size_t learned_ = 0;
    std::size_t amendments_ = 0;
    std::size_t failures_ = 0;
};

void learn_from_small_books(void (*books)(VisitBook const&), std::size_t least) {
    Pupil pupil(seed_from_environment());
    std::size_t number = 0;
    books([&](SmallBook const& small) {
        if (!pupil.may_go_on()) return;
        Diagnostics diagnostics;
        auto const subject = oracle::subject(book_from(small.text), small_ontology(), diagnostics);
        if (!subject) return;
        for_each_small_case(small.axes, [&](Case const& baby) {
            if (++number % small_stride == 0) pupil.learn(*subject, baby, 3);
        });
    });
    pupil.report(least);
}

}  // namespace

TEST_CASE("learning more about random babies flips nothing in the shipped book") {
    auto const& subject = shipped_book();
    auto const seed = seed_from_environment();
    CaseMaker maker(subject, seed);
    Pupil pupil(seed + 1);
    auto const cases = cases_from_environment(usual_cases);
    for (std::size_t i = 0; i < cases && pupil.may_go_on(); ++i)
        pupil.learn(subject, maker.make(), 4);
    pupil.report(cases);
}

TEST_CASE("learning more flips nothing in books that count") {
    learn_from_small_books(books_of_classes, 50000);
}

TEST_CASE("learning more flips nothing in books that derive") {
    learn_from_small_books(books_of_derivations, 10000);
}

TEST_CASE("learning more flips nothing in books of all conditions") {
    learn_from_small_books(books_of_pairs, 50000);
}

}  // namespace asterism::oracle
