// SPDX-License-Identifier: MIT
#include <algorithm>

#include "measures/measuring.h"
#include "review/check_soft.h"
#include "support/small_book.h"
#include "testing.h"

using namespace asterism;

namespace {

/// The small ontology with its ruler measure marked soft.
std::string soft_ontology() {
    auto text = asterism::testing::small_ontology;
    auto const at = text.find("instrument: ruler");
    return text.insert(at, "soft: true, ");
}

std::string problems(std::string const& rules, std::string const& more = {}) {
    auto const loaded = asterism::testing::load(
        asterism::testing::small_book_head + more + "rules:\n" + rules, soft_ontology());
    REQUIRE(loaded.book);
    Diagnostics diagnostics;
    check_soft_measures(*loaded.book, diagnostics);
    std::string text;
    for (auto const& one : diagnostics.sorted()) text += one.code + ": " + one.message + "\n";
    return text;
}

std::string rule(std::string const& when) {
    return asterism::testing::rule("r", when, "genetics", "urgent");
}

}  // namespace

TEST_CASE("a rule on a soft measure alone is found, directly and through a derived finding") {
    CHECK(problems(rule("{ measured: width, mm: { above: 9 } }")).find("rests-on-soft-measure") ==
          0);
    std::string const derived =
        "derived:\n  - { derive: digit, when: { measured: width, mm: { above: 9 } }, because: x., "
        "sources: [s] }\n";
    CHECK(problems(rule("{ present: digit }"), derived).find("rests-on-soft-measure") == 0);
}

TEST_CASE("a soft measure beside something else is fine") {
    CHECK(problems(rule("{ all: [ { measured: width, mm: { above: 9 } }, { present: slant } ] }"))
              .empty());
}

TEST_CASE("the shipped book rests on no soft measure") {
    Diagnostics diagnostics;
    check_soft_measures(asterism::testing::shipped_book(), diagnostics);
    std::string text;
    for (auto const& one : diagnostics.sorted()) text += one.message + "\n";
    CHECK(text == "");
}

TEST_CASE("head, weight, penile length, saturation and pressure may not be marked soft") {
    auto book = asterism::testing::shipped_book();
    auto ontology = *book.ontology;
    for (auto const* id : {"head-circumference", "weight", "penile-length", "pre-ductal-saturation",
                           "right-arm-pressure"})
        ontology.measures[*ontology.measure(id)].soft = true;
    book.ontology = std::make_shared<Ontology const>(std::move(ontology));
    Diagnostics diagnostics;
    check_soft_measures(book, diagnostics);
    auto const all = diagnostics.sorted();
    CHECK(std::count_if(all.begin(), all.end(),
                        [](auto const& one) { return one.code == "never-soft"; }) == 5);
}
