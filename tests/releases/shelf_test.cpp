// SPDX-License-Identifier: MIT
// The shelf of an invented book with two releases and a working version.
#include "rulebook/shelf.h"

#include <map>
#include <string>

#include "testing.h"

using namespace asterism;

namespace {

using Files = std::map<std::string, std::string>;

std::string header(std::string const& version, std::string const& effective) {
    return "rulebook: {id: b, title: Book, version: " + version + ", effective: " + effective +
           ", language: 1, ontology: o}\nservices: [{service: eyes, label: eyes}]\n";
}

std::string digest_of(std::string const& text) {
    Diagnostics diagnostics;
    auto const book = load_rulebook({make_source("b.yaml", text)}, diagnostics);
    REQUIRE(book);
    return book->digest;
}

Files three_versions() {
    auto const one = header("1.0.0", "2030-01-01"), two = header("1.1.0", "2030-07-01");
    return {{"book.yaml", header("1.2.0", "2031-01-01")},
            {"releases/1.0.0/book.yaml", one},
            {"releases/1.1.0/book.yaml", two},
            {"releases/releases.yaml", "releases:\n" +
                                           release_line("1.0.0", "2030-01-01", digest_of(one)) +
                                           release_line("1.1.0", "2030-07-01", digest_of(two))}};
}

struct Opened {
    std::optional<Shelf> shelf;
    Diagnostics diagnostics;
    std::shared_ptr<std::vector<std::string>> asked = std::make_shared<std::vector<std::string>>();

    std::string first_code() const {
        auto const all = diagnostics.sorted();
        return all.empty() ? "" : all.front().code;
    }
};

Opened open(Files files) {
    Opened opened;
    auto const give = [files = std::move(files), asked = opened.asked](std::string const& below) {
        asked->push_back(below);
        std::vector<SourcePtr> result;
        for (auto const& [name, text] : files) {
            bool const released = name.starts_with("releases/");
            if (name.starts_with(below) && (released == !below.empty()))
                result.push_back(make_source(name, text));
        }
        return result;
    };
    opened.shelf = Shelf::open(give, opened.diagnostics);
    return opened;
}

std::string version_on(Shelf const& shelf, std::string const& day) {
    auto const* const book = shelf.in_force(*parse_date(day));
    return book ? book->version : "none";
}

}  // namespace

TEST_CASE("each day has the last book that came into force by then") {
    auto const opened = open(three_versions());
    REQUIRE(opened.shelf);
    for (auto const& [day, version] : {std::pair{"2029-12-31", "none"},
                                       {"2030-01-01", "1.0.0"},
                                       {"2030-06-30", "1.0.0"},
                                       {"2030-07-01", "1.1.0"},
                                       {"2030-12-31", "1.1.0"},
                                       {"2031-01-01", "1.2.0"},
                                       {"2099-01-01", "1.2.0"}}) {
        CAPTURE(day);
        CHECK(version_on(*opened.shelf, day) == version);
    }
    CHECK(opened.shelf->find("1.1.0")->release);
    CHECK_FALSE(opened.shelf->find("1.2.0")->release);
    CHECK(opened.shelf->find("1.3.0") == nullptr);
}

TEST_CASE("a book is read only when it is asked for") {
    auto opened = open(three_versions());
    REQUIRE(opened.shelf);
    CHECK(*opened.asked == std::vector<std::string>{"releases/releases.yaml", ""});
    auto const book = opened.shelf->load(*opened.shelf->find("1.0.0"), opened.diagnostics);
    REQUIRE(book);
    CHECK(book->header.version == "1.0.0");
    CHECK(opened.asked->back() == "releases/1.0.0/");
}

TEST_CASE("an outline says of a book what its header and services say") {
    auto files = three_versions();
    files["rules.yaml"] = "rules: [\n";
    files["vignettes/one.yaml"] = "services: [\n";
    auto opened = open(files);
    REQUIRE(opened.shelf);
    for (auto const& [version, effective] :
         {std::pair{"1.0.0", "2030-01-01"}, {"1.1.0", "2030-07-01"}, {"1.2.0", "2031-01-01"}}) {
        auto const* const book = opened.shelf->find(version);
        auto const outline = opened.shelf->outline(*book, opened.diagnostics);
        REQUIRE(outline);
        CHECK(outline->header.version == version);
        CHECK(outline->header.effective.text == effective);
        REQUIRE(outline->services.size() == 1);
        CHECK(outline->services.front().id.text == "eyes");
        if (book->release) CHECK(outline->digest == book->release->digest.text);
    }
    CHECK(opened.diagnostics.empty());
    CHECK_FALSE(opened.shelf->load(*opened.shelf->find("1.2.0"), opened.diagnostics));
    CHECK(opened.diagnostics.sorted().size() == 2);
    Diagnostics judged;
    CHECK_FALSE(opened.shelf->load_to_judge(*opened.shelf->find("1.2.0"), judged));
    CHECK(judged.sorted().size() == 1);
}

TEST_CASE("a released book that was touched is refused") {
    auto const altered = [](std::string const& from, std::string const& to) {
        auto files = three_versions();
        auto& text = files["releases/1.0.0/book.yaml"];
        text.replace(text.find(from), from.size(), to);
        auto opened = open(files);
        REQUIRE(opened.shelf);
        CHECK(opened.shelf->load(*opened.shelf->find("1.1.0"), opened.diagnostics));
        CHECK_FALSE(opened.shelf->load(*opened.shelf->find("1.0.0"), opened.diagnostics));
        Diagnostics outlined;
        CHECK(opened.shelf->outline(*opened.shelf->find("1.1.0"), outlined));
        CHECK_FALSE(opened.shelf->outline(*opened.shelf->find("1.0.0"), outlined));
        CHECK(outlined.sorted().front().message == opened.diagnostics.sorted().front().message);
        auto const problem = opened.diagnostics.sorted().front();
        CHECK(problem.code == "release-changed");
        CHECK(problem.span.place() == "releases/releases.yaml:2:16");
        return problem.message;
    };
    CHECK(altered("label: eyes", "label: Eyes").find("digest") != std::string::npos);
    CHECK(altered("1.0.0", "1.0.1").find("version `1.0.1`") != std::string::npos);
    CHECK(altered("2030-01-01", "2030-01-02").find("`2030-01-02`") != std::string::npos);
}

TEST_CASE("a released book whose files are gone is an error") {
    auto files = three_versions();
    files.erase("releases/1.0.0/book.yaml");
    auto opened = open(files);
    REQUIRE(opened.shelf);
    CHECK_FALSE(opened.shelf->load(*opened.shelf->find("1.0.0"), opened.diagnostics));
    CHECK(opened.first_code() == "missing-header");
    Diagnostics outlined;
    CHECK_FALSE(opened.shelf->outline(*opened.shelf->find("1.0.0"), outlined));
    CHECK(outlined.sorted().front().code == "missing-header");
}

TEST_CASE("the working book stands after the releases, or is the last of them") {
    auto files = three_versions();
    files["book.yaml"] = header("1.2.0", "2030-07-01");
    CHECK(open(files).first_code() == "effective-not-later");
    CHECK_FALSE(open(files).shelf);
    files["book.yaml"] = header("1.1.0", "2030-07-01");
    auto const opened = open(files);
    REQUIRE(opened.shelf);
    CHECK(opened.shelf->books().size() == 2);
    CHECK(version_on(*opened.shelf, "2031-01-01") == "1.1.0");
}

TEST_CASE("a book without releases is a shelf of one") {
    auto const opened = open({{"book.yaml", header("1.0.0", "2030-01-01")}});
    REQUIRE(opened.shelf);
    CHECK(opened.shelf->books().size() == 1);
    CHECK(open({{"book.yaml", "services: []\n"}}).first_code() == "missing-header");
    CHECK(open({{"book.yaml", header("1.0.0", "2030-13-01")}}).first_code() == "bad-date");
}

TEST_CASE("a day without a book names the first one") {
    auto const opened = open(three_versions());
    REQUIRE(opened.shelf);
    Diagnostics diagnostics;
    auto const source = make_source("<arguments>", "--as-of 2029-01-01");
    CHECK(in_force(*opened.shelf, Word{"2029-01-01", {source, 8, 18}}, diagnostics) == nullptr);
    CHECK(in_force(*opened.shelf, Word{"yesterday", {source, 8, 18}}, diagnostics) == nullptr);
    auto const problems = diagnostics.sorted();
    REQUIRE(problems.size() == 2);
    CHECK(problems[0].code == "bad-date");
    CHECK(problems[1].code == "no-book-in-force");
    CHECK(problems[1].help == "the first, 1.0.0, is in force from 2030-01-01");
    CHECK(problems[1].span.place() == "<arguments>:1:9");
}
