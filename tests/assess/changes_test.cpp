// SPDX-License-Identifier: MIT
// What would change the answer, against brute force: every subset tried,
// nothing assumed.
#include "assess/changes.h"

#include <algorithm>
#include <set>

#include "support/small_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

using Names = std::set<std::string>;
using Sets = std::set<Names>;

CompiledRulebook const& book() {
    static CompiledRulebook const loaded =
        small_book(rule("two", "{ tally: minors, at-least: 2 }", "genetics", "urgent") +
                   rule("mixed", "{ all: [{ tally: majors, at-least: 1 }, { present: crease }] }",
                        "genetics", "same-day") +
                   rule("flag", "{ present: opaque }", "ophthalmology", "same-day") +
                   rule("lens", "{ all: [{ present: lens }, { absent: nubbin }] }", "ophthalmology",
                        "urgent"));
    return loaded;
}

std::vector<std::string> const candidates{"slant", "fold", "crease", "cloudy", "digit", "nubbin"};

std::string text_of(Names const& findings) {
    std::string list;
    for (auto const& finding : findings) list += (list.empty() ? "" : ", ") + finding;
    return "examined: all\nhistory: none\nsex: female\nfindings: [" + list + "]\n";
}

bool suggested(Names const& findings, std::string const& service) {
    return verdict(judge(book(), text_of(findings)), service) == "suggested";
}

Names without(Names const& all, Names const& part) {
    Names rest;
    std::set_difference(all.begin(), all.end(), part.begin(), part.end(),
                        std::inserter(rest, rest.end()));
    return rest;
}

std::vector<Names> subsets(Names const& of) {
    std::vector<std::string> const list(of.begin(), of.end());
    std::vector<Names> result;
    for (unsigned set = 0; set < 1u << list.size(); ++set) {
        Names names;
        for (std::size_t i = 0; i < list.size(); ++i)
            if (set >> i & 1u) names.insert(list[i]);
        result.push_back(std::move(names));
    }
    return result;
}

/// The minimal sets without which the suggestion falls.
Sets brute_force(Names const& present, std::string const& service) {
    Sets falls;
    for (auto const& removed : subsets(present)) {
        if (removed.empty() || suggested(without(present, removed), service)) continue;
        bool const minimal = std::none_of(falls.begin(), falls.end(), [&](Names const& smaller) {
            return std::includes(removed.begin(), removed.end(), smaller.begin(), smaller.end());
        });
        if (!minimal) continue;
        std::erase_if(falls, [&](Names const& larger) {
            return std::includes(larger.begin(), larger.end(), removed.begin(), removed.end());
        });
        falls.insert(removed);
    }
    return falls;
}

Sets named(std::vector<std::vector<Change>> const& sets) {
    Sets result;
    for (auto const& set : sets) {
        Names names;
        for (auto const& change : set) names.insert(change.id);
        result.insert(names);
    }
    return result;
}

WhatWouldChange change_of(std::string const& text, std::string const& service) {
    auto const one = baby(book(), text);
    auto answer = assess(book(), one);
    add_what_would_change(book(), one, answer);
    return referral(answer, service).what_would_change;
}

}  // namespace

TEST_CASE(
    "without: exactly the minimal sets, over every combination of six "
    "findings") {
    int suggestions = 0;
    for (auto const& present : subsets(Names(candidates.begin(), candidates.end()))) {
        for (auto const* service : {"genetics", "ophthalmology"}) {
            if (!suggested(present, service)) continue;
            ++suggestions;
            CAPTURE(text_of(present));
            CAPTURE(service);
            auto const change = change_of(text_of(present), service);
            auto const expected = brute_force(present, service);
            auto const found = named(change.without);
            CHECK(std::includes(expected.begin(), expected.end(), found.begin(), found.end()));
            if (!change.more_without) CHECK(found == expected);
        }
    }
    CHECK(suggestions > 40);
}

TEST_CASE(
    "with: each addition proposed completes the verdict, and none "
    "smaller does") {
    int proposals = 0;
    for (auto const& present : subsets(Names(candidates.begin(), candidates.end()))) {
        for (auto const* service : {"genetics", "ophthalmology"}) {
            if (suggested(present, service)) continue;
            CAPTURE(text_of(present));
            for (auto const& addition : named(change_of(text_of(present), service).with)) {
                ++proposals;
                auto more = present;
                more.insert(addition.begin(), addition.end());
                CHECK(suggested(more, service));
                for (auto const& finding : addition) {
                    auto less = more;
                    less.erase(finding);
                    CHECK_FALSE(suggested(less, service));
                }
            }
        }
    }
    CHECK(proposals > 40);
}

TEST_CASE("with: what would do it alone, had nothing else been found, is only counted") {
    auto const change = change_of("examined: all\nsex: female\n", "ophthalmology");
    CHECK(change.alone == 3);  // the opaque lens; and where no nubbin is, any lens sign
    CHECK(change.with.empty());
}

TEST_CASE("with: nothing impossible in this sex, nothing stated absent") {
    for (auto const& set :
         named(change_of("examined: all\nsex: female\nfindings: [crease]\n", "genetics").with))
        CHECK_FALSE(set.contains("testis"));
    auto const male =
        named(change_of("examined: all\nsex: male\nfindings: [crease]\n", "genetics").with);
    CHECK(male.contains(Names{"testis"}));
    auto const looked = named(
        change_of("examined: all\nsex: male\nfindings: [crease]\nabsent: [testis]\n", "genetics")
            .with);
    CHECK_FALSE(looked.contains(Names{"testis"}));
}

TEST_CASE("examine: the fewest steps that, all found normal, settle it") {
    auto const change =
        change_of("examined: [look]\nhistory: none\nsex: female\n", "ophthalmology");
    REQUIRE(change.examine.size() == 1);
    CHECK(change.examine.front().step == "reflex");
    CHECK(change.examine.front().essential);
    auto const both = change_of("history: none\nsex: female\n", "ophthalmology");
    Names steps;
    for (auto const& step : both.examine) steps.insert(step.step);
    auto const settled = judge(book(), "examined: [reflex, look]\nhistory: none\nsex: female\n");
    CHECK(verdict(settled, "ophthalmology") == "not-suggested");
    CHECK(steps == Names{"look", "reflex"});
}

TEST_CASE(
    "a measure past its cut-off stands among the things that carry a "
    "suggestion") {
    auto const measured =
        small_book(rule("r", "{ measured: width, mm: { above: 5 } }", "genetics", "routine"));
    auto const one = baby(measured, "measures: { width: 9 mm }\n");
    auto answer = assess(measured, one);
    add_what_would_change(measured, one, answer);
    CHECK(named(referral(answer, "genetics").what_would_change.without) == Sets{{"width"}});
}
