// SPDX-License-Identifier: MIT
/// Gathering of diagnostics: order, uniqueness, and what counts as an error.
#include "base/diagnostic.h"

#include <string>
#include <vector>

#include "base/truth.h"
#include "testing.h"

using namespace asterism;

namespace {

SourcePtr const first = make_source("a.yaml", "0123456789\n0123456789\n");
SourcePtr const second = make_source("b.yaml", "0123456789\n");

Span at(SourcePtr const& source, std::uint32_t offset) { return {source, offset, offset + 1}; }

std::vector<std::string> messages(Diagnostics const& diagnostics) {
    std::vector<std::string> result;
    for (auto const& diagnostic : diagnostics.sorted()) result.push_back(diagnostic.message);
    return result;
}

using Texts = std::vector<std::string>;

}  // namespace

TEST_CASE("nothing gathered is empty and has no errors") {
    Diagnostics const none;
    CHECK(none.empty());
    CHECK_FALSE(none.has_errors());
    CHECK(none.sorted().empty());
}

TEST_CASE("a warning or a note is no error") {
    Diagnostics some;
    some.warning("w", {}, "a warning");
    some.note("n", {}, "a note");
    CHECK_FALSE(some.empty());
    CHECK_FALSE(some.has_errors());
    some.error("e", {}, "an error");
    CHECK(some.has_errors());
}

TEST_CASE("each way to report keeps code, severity, message and help") {
    Diagnostics some;
    some.error("code-e", at(first, 0), "first", "help e");
    some.warning("code-w", at(first, 1), "second", "help w");
    some.note("code-n", at(first, 2), "third");
    auto const all = some.sorted();
    REQUIRE(all.size() == 3);
    CHECK(all[0].code == "code-e");
    CHECK(all[0].severity == Severity::error);
    CHECK(all[0].help == "help e");
    CHECK(all[1].code == "code-w");
    CHECK(all[1].severity == Severity::warning);
    CHECK(all[1].help == "help w");
    CHECK(all[2].severity == Severity::note);
    CHECK(all[2].help == "");
}

TEST_CASE("diagnostics are sorted by file, then by place") {
    Diagnostics some;
    some.error("x", at(second, 0), "b0");
    some.error("x", at(first, 15), "a15");
    some.error("x", at(first, 2), "a2");
    some.error("x", {}, "nowhere");
    CHECK(messages(some) == Texts{"nowhere", "a2", "a15", "b0"});
}

TEST_CASE("at one place they are sorted by code, then by message") {
    Diagnostics some;
    some.error("z", at(first, 3), "late code");
    some.error("a", at(first, 3), "m2");
    some.error("a", at(first, 3), "m1");
    CHECK(messages(some) == Texts{"m1", "m2", "late code"});
}

TEST_CASE("the order of reporting does not show") {
    Diagnostics forward, backward;
    for (std::uint32_t i = 0; i < 9; ++i) {
        forward.error("c", at(first, i), std::to_string(i));
        backward.error("c", at(first, 8 - i), std::to_string(8 - i));
    }
    CHECK(messages(forward) == messages(backward));
    CHECK(messages(forward).size() == 9);
}

TEST_CASE("the same problem reported twice is shown once") {
    Diagnostics some;
    some.error("c", at(first, 1), "same");
    some.error("c", at(first, 5), "other");
    some.error("c", at(first, 1), "same");
    CHECK(messages(some) == Texts{"same", "other"});
}

TEST_CASE("the same text at another place, or another text at one place, is another problem") {
    Diagnostics some;
    some.error("c", at(first, 1), "text");
    some.error("c", at(first, 2), "text");
    some.error("c", at(second, 1), "text");
    some.error("d", at(first, 1), "text");
    some.warning("c", at(first, 1), "text");
    CHECK(some.sorted().size() == 5);
}

TEST_CASE("append takes over everything") {
    Diagnostics a, b;
    a.error("c", at(first, 1), "one");
    b.warning("c", at(first, 0), "zero");
    b.append(a);
    CHECK(messages(b) == Texts{"zero", "one"});
    CHECK(b.has_errors());
    CHECK(messages(a) == Texts{"one"});
}

TEST_CASE("related places travel with the diagnostic") {
    Diagnostics some;
    some.add({"twice", Severity::error, "m", at(first, 12), {{at(first, 1), "first here"}}, "h"});
    auto const all = some.sorted();
    REQUIRE(all.size() == 1);
    REQUIRE(all[0].related.size() == 1);
    CHECK(all[0].related[0].span.place() == "a.yaml:1:2");
    CHECK(all[0].related[0].message == "first here");
    CHECK(all[0].span.place() == "a.yaml:2:2");
}

TEST_CASE("severities have names") {
    CHECK(to_text(Severity::error) == "error");
    CHECK(to_text(Severity::warning) == "warning");
    CHECK(to_text(Severity::note) == "note");
}

TEST_CASE("strong Kleene truth tables") {
    constexpr auto n = Truth::no, u = Truth::unknown, y = Truth::yes;
    struct Row {
        Truth a, b, both, either;
    };
    for (Row const& row :
         {Row{n, n, n, n}, Row{n, u, n, u}, Row{n, y, n, y}, Row{u, n, n, u}, Row{u, u, u, u},
          Row{u, y, u, y}, Row{y, n, n, y}, Row{y, u, u, y}, Row{y, y, y, y}}) {
        CAPTURE(to_text(row.a));
        CAPTURE(to_text(row.b));
        CHECK((row.a & row.b) == row.both);
        CHECK((row.a | row.b) == row.either);
        auto const de_morgan = (!row.a) | (!row.b);
        CHECK(!(row.a & row.b) == de_morgan);
    }
    CHECK(!n == y);
    CHECK(!u == u);
    CHECK(!y == n);
}

TEST_CASE("truth from a boolean, and its words") {
    CHECK(truth(true) == Truth::yes);
    CHECK(truth(false) == Truth::no);
    CHECK(to_text(Truth::yes) == "yes");
    CHECK(to_text(Truth::no) == "no");
    CHECK(to_text(Truth::unknown) == "unknown");
    static_assert((Truth::unknown & !Truth::unknown) == Truth::unknown);
}
