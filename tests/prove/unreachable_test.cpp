// SPDX-License-Identifier: MIT
// Rules that no baby meets, and rules that another one implies.
#include "review/check_unreachable.h"

#include "support/small_book.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

/// `code: id` of everything found, in order of place.
std::vector<std::string> found(std::string const& rules) {
    Diagnostics diagnostics;
    check_unreachable(small_book(rules), diagnostics);
    std::vector<std::string> result;
    for (auto const& d : diagnostics.sorted()) {
        auto const begin = d.message.find('`') + 1;
        auto const quoted = d.message.substr(begin, d.message.find('`', begin) - begin);
        result.push_back(d.code + ": " + quoted);
    }
    return result;
}

using Lines = std::vector<std::string>;

}  // namespace

TEST_CASE("conditions that exclude each other are told") {
    CHECK(found(rule("a", "{ all: [ { present: slant }, { absent: slant } ] }", "genetics",
                     "urgent")) == Lines{"never-fires: a"});
    CHECK(found(rule("a", "{ all: [ { present: opaque }, { absent: lens } ] }", "genetics",
                     "urgent")) == Lines{"never-fires: a"});
    CHECK(found(rule("a", "{ all: [ { sex: male }, { sex: female } ] }", "genetics", "urgent")) ==
          Lines{"never-fires: a"});
    CHECK(found(rule("a", "{ all: [ { sex: female }, { present: testis } ] }", "genetics",
                     "urgent")) == Lines{"never-fires: a"});
    CHECK(found(rule("a", "{ all: [ { age: { below: 24h } }, { age: { at-least: 24h } } ] }",
                     "genetics", "urgent")) == Lines{"never-fires: a"});
    CHECK(found(rule(
              "a", "{ all: [ { gestation: { below: 30w0d } }, { gestation: { above: 31w0d } } ] }",
              "genetics", "urgent")) == Lines{"never-fires: a"});
    CHECK(found(rule("a",
                     "{ all: [ { measured: width, mm: { above: 9 } }, { measured: width, mm: { "
                     "below: 5 } } ] }",
                     "genetics", "urgent")) == Lines{"never-fires: a"});
    CHECK(found(rule("a", "{ tally: minors, at-least: 4 }", "genetics", "urgent")) ==
          Lines{"never-fires: a"});  // there are three keys
}

TEST_CASE("what some baby meets is not told") {
    CHECK(found(rule("a", "{ all: [ { present: opaque }, { absent: slant } ] }", "genetics",
                     "urgent"))
              .empty());
    CHECK(found(rule("a",
                     "{ all: [ { measured: width, mm: { above: 5 } }, { measured: width, mm: { "
                     "below: 9 } } ] }",
                     "genetics", "urgent"))
              .empty());
    CHECK(found(rule("a", "{ tally: minors, at-least: 3 }", "genetics", "urgent")).empty());
    CHECK(found(rule("a", "{ all: [ { sex: male }, { present: testis } ] }", "genetics", "urgent"))
              .empty());
}

TEST_CASE(
    "a rule that another implies is noted, a sharper one as an overlap; an other or longer one is "
    "not") {
    auto const wide = rule("wide", "{ present: lens }", "genetics", "urgent");
    CHECK(found(rule("narrow", "{ present: opaque }", "genetics", "routine") + wide) ==
          Lines{"implied: narrow"});
    CHECK(found(rule("narrow", "{ all: [ { present: cloudy }, { present: slant } ] }", "genetics",
                     "urgent") +
                wide) == Lines{"implied: narrow"});
    CHECK(found(rule("narrow", "{ present: opaque }", "genetics", "same-day") + wide) ==
          Lines{"overlap: narrow"});
    CHECK(found(rule("narrow", "{ present: opaque }", "ophthalmology", "routine") + wide).empty());
    CHECK(found(rule("other", "{ present: slant }", "genetics", "routine") + wide).empty());
    CHECK(found(rule("narrow", "{ present: opaque }", "genetics", "routine",
                     ", first-steps: [scan]") +
                wide)
              .empty());
}

TEST_CASE("of two equal rules one is noted") {
    CHECK(found(rule("a", "{ present: slant }", "genetics", "urgent") +
                rule("b", "{ present: slant }", "genetics", "urgent")) == Lines{"implied: b"});
}

TEST_CASE("without time nothing is said") {
    Diagnostics diagnostics;
    auto const book =
        small_book(rule("a", "{ all: [ { sex: male }, { sex: female } ] }", "genetics", "urgent"));
    check_unreachable(book, diagnostics, {1, std::chrono::milliseconds(0)});
    CHECK(diagnostics.empty());
}
