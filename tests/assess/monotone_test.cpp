// SPDX-License-Identifier: MIT
// Learning more never flips a settled verdict: every small case against every
// case that says more.
#include <vector>

#include "support/small_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

/// Three states of five findings: not examined, absent, present.
constexpr int states = 3;
std::vector<std::string> const names{"slant", "crease", "cloudy", "digit", "testis"};

std::string text_of(int code) {
    std::string present, absent;
    for (auto const& name : names) {
        if (code % states == 1) absent += (absent.empty() ? "" : ", ") + name;
        if (code % states == 2) present += (present.empty() ? "" : ", ") + name;
        code /= states;
    }
    return "findings: [" + present + "]\nabsent: [" + absent + "]\n";
}

int all_codes() {
    int count = 1;
    for (std::size_t i = 0; i < names.size(); ++i) count *= states;
    return count;
}

/// The codes that say one thing more than this one.
std::vector<int> one_more(int code) {
    std::vector<int> result;
    int place = 1;
    for (std::size_t i = 0; i < names.size(); ++i, place *= states) {
        if (code / place % states != 0) continue;
        result.push_back(code + place);
        result.push_back(code + 2 * place);
    }
    return result;
}

void check_never_flips(CompiledRulebook const& book) {
    std::vector<Assessment> answers;
    for (int code = 0; code < all_codes(); ++code) answers.push_back(judge(book, text_of(code)));
    for (int code = 0; code < all_codes(); ++code) {
        for (auto const more : one_more(code)) {
            auto const& before = answers[static_cast<std::size_t>(code)];
            auto const& after = answers[static_cast<std::size_t>(more)];
            for (std::size_t i = 0; i < before.referrals.size(); ++i) {
                if (before.referrals[i].verdict == Verdict::unsettled) continue;
                if (before.referrals[i].verdict == after.referrals[i].verdict) continue;
                CAPTURE(text_of(code));
                CAPTURE(text_of(more));
                CHECK(to_text(before.referrals[i].verdict) == to_text(after.referrals[i].verdict));
            }
        }
    }
    CHECK(answers.size() == 243);
}

}  // namespace

TEST_CASE(
    "counting rules with a covered field, a major tally and a bound from "
    "above") {
    check_never_flips(
        small_book(rule("two", "{ tally: minors, at-least: 2 }", "genetics", "urgent") +
                   rule("few",
                        "{ all: [{ tally: minors, at-most: 1 }, { tally: majors, at-least: "
                        "1 }] }",
                        "ophthalmology", "urgent") +
                   rule("majors", "{ tally: majors, at-least: 2 }", "orthopaedics", "same-day")));
}

TEST_CASE("nested conditions with absences") {
    check_never_flips(small_book(rule("a",
                                      "{ all: [{ present: lens }, { none: [{ present: slant }, "
                                      "{ present: digit }] }] }",
                                      "genetics", "urgent") +
                                 rule("b",
                                      "{ at-least: 2, of: [{ present: crease }, { absent: "
                                      "slant }, { present: testis "
                                      "}] }",
                                      "ophthalmology", "urgent") +
                                 rule("c", "{ any: [{ absent: cloudy }, { present: opaque }] }",
                                      "orthopaedics", "routine")));
}
