// SPDX-License-Identifier: MIT
#include "review/coverage.h"

#include "assess/facts.h"
#include "support/small_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

Coverage seen(CompiledRulebook const& book, std::vector<std::string> const& babies) {
    Coverage coverage(book);
    for (auto const& text : babies) {
        auto const one = baby(book, text);
        coverage.see(evaluate(book, one, Rest::unknown).values);
    }
    return coverage;
}

}  // namespace

TEST_CASE("a condition is covered once seen met and seen not met") {
    auto const book = small_book(
        rule("r", "{ any: [ { present: slant }, { present: crease } ] }", "genetics", "urgent"));
    REQUIRE(seen(book, {}).nodes().size() == 3);
    CHECK(seen(book, {}).covered() == 0);
    CHECK(seen(book, {"{ examined: all }"}).covered() == 0);
    CHECK(seen(book, {"{ examined: all, findings: [slant] }"}).covered() == 0);
    auto const both = seen(book, {"{ examined: all }", "{ examined: all, findings: [slant] }"});
    CHECK(both.covered() == 2);  // the whole and the slant, not the crease
    CHECK(both.percent() == doctest::Approx(200.0 / 3));
    auto const& crease = both.nodes()[2];
    CHECK(crease.times(Truth::yes) == 0);
    CHECK(crease.times(Truth::no) == 2);
    CHECK(crease.part == "r");
}

TEST_CASE("what is open covers nothing and is counted beside") {
    auto const book = small_book(rule("r", "{ present: slant }", "genetics", "urgent"));
    auto const open = seen(book, {"{}", "{ findings: [slant] }"});
    CHECK(open.nodes()[0].times(Truth::unknown) == 1);
    CHECK(open.covered() == 0);
}

TEST_CASE("a book without conditions is covered") {
    CHECK(seen(small_book("[]\n"), {}).percent() == 100);
}
