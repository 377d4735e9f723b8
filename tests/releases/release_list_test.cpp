// SPDX-License-Identifier: MIT
// The list of releases: what it accepts, and every way in which it can be wrong, with its place.
#include "rulebook/release.h"

#include <string>
#include <vector>

#include "testing.h"

using namespace asterism;

namespace {

std::string const digest_a(64, 'a'), digest_b(64, 'b');

struct Read {
    std::vector<Release> releases;
    std::vector<Diagnostic> problems;
};

Read read(std::string text) {
    Diagnostics diagnostics;
    Read result;
    result.releases = read_releases(make_source("releases.yaml", std::move(text)), diagnostics);
    result.problems = diagnostics.sorted();
    return result;
}

std::string two(std::string const& version, std::string const& effective) {
    return "releases:\n" + release_line("1.2.0", "2030-01-01", digest_a) +
           release_line(version, effective, digest_b);
}

}  // namespace

TEST_CASE("the lines that the program writes are read back") {
    auto const result = read(two("1.10.0", "2030-06-01"));
    CHECK(result.problems.empty());
    REQUIRE(result.releases.size() == 2);
    CHECK(result.releases[1].version.text == "1.10.0");
    CHECK(result.releases[1].digest.text == digest_b);
    CHECK(to_text(result.releases[1].date) == "2030-06-01");
    CHECK(read("releases: []\n").problems.empty());
}

TEST_CASE("versions are three whole numbers, compared as numbers") {
    // Semantic Versioning 2.0.0, points 2 and 11: no leading text, 1.10.0 comes after 1.9.0.
    CHECK(parse_version("1.10.0") > parse_version("1.9.0"));
    CHECK(parse_version("0.2.0") == std::optional(std::array{0, 2, 0}));
    for (auto const* wrong : {"", "1", "1.2", "1.2.3.4", "v1.2.3", "1.2.x", "1..3", "-1.2.3",
                              "1.2.3-beta", " 1.2.3", "1.2.3 ", "99999999999.0.0"}) {
        CAPTURE(wrong);
        CHECK_FALSE(parse_version(wrong));
    }
}

TEST_CASE("each way in which the list can be wrong is told at its place") {
    struct Row {
        std::string text, code, place;
    };
    auto const line = [](std::string const& v, std::string const& e, std::string const& d) {
        return "releases:\n" + release_line(v, e, d);
    };
    for (auto const& [text, code, place] :
         {Row{line("1.2", "2030-01-01", digest_a), "bad-version", "releases.yaml:2:16"},
          Row{line("1.2.0", "2030-02-30", digest_a), "bad-date", "releases.yaml:2:34"},
          Row{line("1.2.0", "2030-01-01", "abc"), "bad-digest", "releases.yaml:2:54"},
          Row{line("1.2.0", "2030-01-01", std::string(64, 'A')), "bad-digest",
              "releases.yaml:2:54"},
          Row{two("1.2.0", "2030-06-01"), "release-order", "releases.yaml:3:16"},
          Row{two("1.1.9", "2030-06-01"), "release-order", "releases.yaml:3:16"},
          Row{two("1.3.0", "2030-01-01"), "release-order", "releases.yaml:3:34"},
          Row{"releases:\n  - { version: 1.2.0, sha256: x }\n", "missing-key", "releases.yaml:2:5"},
          Row{"relases: []\n", "unknown-key", "releases.yaml:1:1"},
          Row{"releases: 3\n", "wrong-form", "releases.yaml:1:11"}}) {
        CAPTURE(text);
        auto const result = read(text);
        CHECK(result.releases.empty());
        bool found = false;
        for (auto const& problem : result.problems) {
            CAPTURE(problem.code);
            CAPTURE(problem.span.place());
            found = found || (problem.code == code && problem.span.place() == place);
        }
        CHECK(found);
    }
}

TEST_CASE("a list with several mistakes tells them all") {
    auto const result = read("releases:\n  - { version: a, effective: b, sha256: c }\n");
    CHECK(result.problems.size() == 3);
}

TEST_CASE("files of releases are told from those of their book") {
    auto const kept = [](std::vector<std::string> const& names) {
        std::vector<SourcePtr> files;
        for (auto const& name : names) files.push_back(make_source(name, ""));
        std::vector<std::string> result;
        for (auto const& file : files_of_book(files)) result.push_back(file->name());
        return result;
    };
    using Names = std::vector<std::string>;
    CHECK(kept({"r/book.yaml", "r/releases/1.0.0/book.yaml", "r/releases/releases.yaml"}) ==
          Names{"r/book.yaml"});
    CHECK(kept({"book.yaml", "releases/1.0.0/book.yaml"}) == Names{"book.yaml"});
    CHECK(kept({"r/releases/1.0.0/book.yaml", "r/releases/1.0.0/rules.yaml"}).size() == 2);
    CHECK(kept({"releases/mine/book.yaml", "releases/mine/releases/1.0.0/book.yaml"}) ==
          Names{"releases/mine/book.yaml"});
    CHECK(kept({"r/book.yaml", "r/my-releases/x.yaml", "r/x/releases.yaml"}).size() == 3);
    CHECK(kept({"r/CHANGELOG.md", "r/book.yaml"}) == Names{"r/book.yaml"});
    CHECK(kept({}).empty());
}
