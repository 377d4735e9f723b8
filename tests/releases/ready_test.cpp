// SPDX-License-Identifier: MIT
// Whether a book may be released: version, day, changelog.
#include "rulebook/release_ready.h"

#include <string>
#include <vector>

#include "testing.h"

using namespace asterism;

namespace {

Rulebook book(std::string version, std::string effective) {
    Rulebook result;
    result.header.version = std::move(version);
    result.header.effective.text = std::move(effective);
    result.digest = "now";
    return result;
}

std::vector<Release> const released{
    {{"1.0.0", {}}, {"2030-01-01", {}}, {"then", {}}, *parse_date("2030-01-01")},
    {{"1.1.0", {}}, {"2030-07-01", {}}, {"now", {}}, *parse_date("2030-07-01")}};

std::vector<ReleaseNotes> notes(std::string const& version) {
    return {{{version, {}}, "", {"Something."}}};
}

std::vector<Diagnostic> problems(Rulebook const& one, std::vector<ReleaseNotes> const& told) {
    Diagnostics diagnostics;
    check_ready(one, released, told, diagnostics);
    return diagnostics.sorted();
}

std::vector<std::string> codes(Rulebook const& one, std::vector<ReleaseNotes> const& told) {
    std::vector<std::string> result;
    for (auto const& problem : problems(one, told)) result.push_back(problem.code);
    return result;
}

using Codes = std::vector<std::string>;

}  // namespace

TEST_CASE("a book with a later version, a later day and notes is ready") {
    CHECK(codes(book("1.2.0", "2030-07-02"), notes("1.2.0")).empty());
    CHECK(codes(book("1.10.0", "2031-01-01"), notes("1.10.0")).empty());
    Diagnostics first;
    check_ready(book("0.1.0", "2029-01-01"), {}, notes("0.1.0"), first);
    CHECK(first.empty());
}

TEST_CASE("each thing that is missing is told") {
    CHECK(codes(book("1.2", "2031-01-01"), notes("1.2")) == Codes{"bad-version"});
    CHECK(codes(book("1.0.9", "2031-01-01"), notes("1.0.9")) == Codes{"release-order"});
    CHECK(codes(book("1.2.0", "2030-07-01"), notes("1.2.0")) == Codes{"effective-not-later"});
    CHECK(codes(book("1.2.0", "2030-02-30"), notes("1.2.0")) == Codes{"bad-date"});
    CHECK(codes(book("1.2.0", "2031-01-01"), notes("1.1.0")) == Codes{"missing-notes"});
    CHECK(codes(book("1.0.9", "2030-01-01"), {}).size() == 3);
}

TEST_CASE("a version that is released already says whether the book has changed since") {
    auto const same = problems(book("1.1.0", "2030-07-01"), notes("1.1.0"));
    REQUIRE(same.size() == 1);
    CHECK(same[0].code == "already-released");
    CHECK(same[0].help == "nothing has changed since");
    auto const changed = problems(book("1.0.0", "2030-01-01"), notes("1.0.0"));
    REQUIRE(changed.size() == 1);
    CHECK(changed[0].help == "the book has changed since: raise `version`");
}
