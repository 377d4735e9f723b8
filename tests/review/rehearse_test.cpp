// SPDX-License-Identifier: MIT
#include "review/rehearse.h"

#include "review/check.h"
#include "support/small_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

std::string const rules = "rules:\n" +
                          rule("two", "{ tally: minors, at-least: 2 }", "genetics", "urgent") +
                          rule("flag", "{ present: opaque }", "ophthalmology", "same-day");

std::vector<std::string> failures(std::string const& expect,
                                  std::string const& findings = "[slant, crease]") {
    auto const loaded =
        load(small_book_head + rules +
             "vignettes:\n  - vignette: v\n    story: x.\n    case: { examined: all, findings: " +
             findings + " }\n    expect: " + expect + "\n    sources: [s]\n");
    REQUIRE(loaded.book);
    Diagnostics diagnostics;
    std::vector<std::string> messages;
    for (auto const& failure : rehearse(*loaded.book, diagnostics))
        messages.push_back(failure.message);
    for (auto const& diagnostic : diagnostics.sorted()) messages.push_back(diagnostic.code);
    return messages;
}

}  // namespace

TEST_CASE("a vignette that holds has no failure") {
    CHECK(failures("{ referrals: { genetics: { verdict: suggested, urgency: urgent, by: [two] } }, "
                   "tallies: { minors: 2 } }")
              .empty());
    CHECK(failures("{ referrals: { genetics: not-suggested } }", "[crease]").empty());
}

TEST_CASE("each way in which a vignette can fail is told") {
    struct Row {
        char const* expect;
        char const* message;
    };
    for (auto const& [expect, message] :
         {Row{"{ referrals: {} }", "vignette `v`: genetics is suggested by two, but not expected"},
          Row{"{ referrals: { genetics: not-suggested } }",
              "vignette `v`: genetics is suggested, expected not-suggested (by two)"},
          Row{"{ referrals: { genetics: { verdict: suggested, urgency: routine } } }",
              "vignette `v`: genetics is urgent, expected routine"},
          Row{"{ referrals: { genetics: { verdict: suggested, by: [flag] } } }",
              "vignette `v`: genetics is decided by two, expected flag"},
          Row{"{ referrals: { genetics: suggested, ophthalmology: unsettled } }",
              "vignette `v`: ophthalmology is not-suggested, expected unsettled"},
          Row{"{ referrals: { genetics: suggested }, tallies: { minors: 1 } }",
              "vignette `v`: minors is 2, expected 1"}}) {
        CAPTURE(expect);
        auto const found = failures(expect);
        REQUIRE(found.size() == 1);
        CHECK(found.front() == message);
    }
}

TEST_CASE("a vignette that names what does not exist is a problem of its own") {
    CHECK(failures("{ referrals: { genetcs: suggested } }") ==
          std::vector<std::string>{"unknown-service"});
    CHECK(failures("{ referrals: { genetics: { verdict: suggested, by: [too] } } }") ==
          std::vector<std::string>{"unknown-rule"});
    CHECK(failures("{ tallies: { minor: 2 } }") == std::vector<std::string>{"unknown-tally"});
    CHECK(failures("{ refferals: {} }") == std::vector<std::string>{"unknown-key"});
    CHECK(failures("{ referrals: { genetics: suggested } }", "[crese]") ==
          std::vector<std::string>{"unknown-finding"});
}

TEST_CASE("a red flag that suggests nothing fails the check, alone and beside normal findings") {
    auto const checked = [](std::string const& text) {
        auto const loaded = load(small_book_head + text);
        REQUIRE(loaded.book);
        Diagnostics diagnostics;
        check_book(*loaded.book, diagnostics);
        return codes(diagnostics);
    };
    auto const count = [](std::vector<std::string> const& all, std::string const& code) {
        return std::count(all.begin(), all.end(), code);
    };
    CHECK(count(checked(rules), "silent-red-flag") == 0);
    CHECK(count(checked("rules: []\n"), "silent-red-flag") == 2);
    auto const conditional =
        "rules:\n" + rule("flag", "{ all: [{ present: opaque }, { absent: slant }] }",
                          "ophthalmology", "same-day");
    CHECK(count(checked(conditional), "silent-red-flag") == 1);
    CHECK(count(checked(rules), "no-vignette") == 2);
}
