// SPDX-License-Identifier: MIT
// A writer that does not show what would change the answer writes the same without it; every other
// one shows it.
#include "format_book.h"
#include "render/assessment_writers.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

TEST_CASE("what would change is shown by exactly the writers that say so") {
    auto const judged = golden_case("everything");
    auto without = judged.assessment;
    for (auto& referral : without.referrals) referral.what_would_change = {};
    TextOptions const full{false, Detail::full};
    for (auto const& writer : assessment_writers()) {
        CAPTURE(writer.name);
        auto const with_changes =
            writer.write({judged.assessment, judged.baby, format_book(), full});
        auto const bare = writer.write({without, judged.baby, format_book(), full});
        CHECK((with_changes != bare) == writer.shows_changes);
    }
}
