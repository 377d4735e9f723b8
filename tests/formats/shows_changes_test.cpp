// SPDX-License-Identifier: MIT
// What would change an answer is worked out for what a writer tells of it and for nothing else:
// told more, it writes the same; told less, it does not.
#include <array>

#include "format_book.h"
#include "render/assessment_writers.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

constexpr std::array all_told{ChangesTold::none, ChangesTold::in_brief, ChangesTold::all};

std::string written_with(AssessmentWriter const& writer, TextOptions const& text, Case const& baby,
                         ChangesTold told) {
    auto const answer = assess(format_book(), baby, told);
    return writer.write({answer, baby, format_book(), text});
}

/// One that suggests something, one that suggests nothing, one with open verdicts.
std::vector<Judged> cases() {
    return {golden_case("everything"), golden_case("quiet"), golden_case("two-services"),
            judged(format_book(), "case: bare\nfindings: [epicanthal fold]\n")};
}

/// The least after which more does not change what is written.
ChangesTold least_needed(AssessmentWriter const& writer, TextOptions const& text) {
    auto least = ChangesTold::none;
    for (auto const& one : cases()) {
        auto const whole = written_with(writer, text, one.baby, ChangesTold::all);
        for (auto const told : all_told)
            if (written_with(writer, text, one.baby, told) != whole && told >= least)
                least = static_cast<ChangesTold>(static_cast<int>(told) + 1);
    }
    return least;
}

}  // namespace

TEST_CASE("what would change is worked out for exactly what a writer tells of it") {
    for (auto const& writer : assessment_writers()) {
        for (auto const detail : {Detail::brief, Detail::full}) {
            CAPTURE(writer.name);
            CAPTURE(static_cast<int>(detail));
            TextOptions const text{false, detail};
            CHECK(least_needed(writer, text) == writer.changes(text));
        }
    }
}
