// SPDX-License-Identifier: MIT
// The releases of the newborn book: they keep the digest of the day of their release, still
// compile, and still judge.
#include <algorithm>
#include <map>
#include <memory>
#include <string>

#include "assess/assess.h"
#include "cases/read_case.h"
#include "compile/compiled.h"
#include "embedded/embedded.h"
#include "rulebook/shelf.h"
#include "testing.h"

using namespace asterism;

namespace {

// What `asterism --version` printed on the day of the release. A line is added with each release;
// none is ever changed.
std::map<std::string, std::string> const released{
    {"0.1.0", "6b386456b2e82fa819e2b05eee4cd522623de6c687ced491aa47d364ae6bd37a"},
};

std::string const book_folder = "rules/newborn/";

std::vector<SourcePtr> below(std::string const& prefix) {
    std::vector<SourcePtr> files;
    for (auto const& file : embedded::files()) {
        bool const text = file.name.ends_with(".yaml") || file.name.ends_with(".csv");
        if (text && file.name.starts_with(prefix)) {
            files.push_back(make_source(std::string(file.name), std::string(file.text)));
        }
    }
    return files;
}

Shelf shelf() {
    Diagnostics diagnostics;
    auto opened = Shelf::open(
        [](std::string const& place) {
            auto const files = below(book_folder + place);
            return place.empty() ? files_of_book(files) : files;
        },
        diagnostics);
    for (auto const& d : diagnostics.sorted()) MESSAGE(d.span.place(), ": ", d.message);
    REQUIRE(opened);
    return *opened;
}

std::shared_ptr<Ontology const> ontology() {
    static auto const loaded = [] {
        Diagnostics diagnostics;
        auto read = load_ontology(below("ontology/"), diagnostics);
        REQUIRE(read);
        return std::make_shared<Ontology const>(std::move(*read));
    }();
    return loaded;
}

CompiledRulebook compiled(ShelvedBook const& book) {
    Diagnostics diagnostics;
    auto const read = shelf().load(book, diagnostics);
    for (auto const& d : diagnostics.sorted()) MESSAGE(d.span.place(), ": ", d.message);
    REQUIRE(read);
    auto result = compile(read, ontology(), diagnostics);
    REQUIRE(result);
    return std::move(*result);
}

Verdict genetics(CompiledRulebook const& book, std::string const& findings) {
    Diagnostics diagnostics;
    auto const baby = read_case(
        make_source("case.yaml", "examined: all\nhistory: none\nfindings: [" + findings + "]\n"),
        *ontology(), diagnostics);
    REQUIRE_FALSE(diagnostics.has_errors());
    for (auto const& referral : assess(book, baby).referrals) {
        if (referral.service == "genetics") return referral.verdict;
    }
    return Verdict::unsettled;
}

}  // namespace

TEST_CASE("every released digest is listed here, and none has changed") {
    auto const books = shelf().books();
    std::map<std::string, std::string> listed;
    for (auto const& book : books) {
        if (book.release) listed[book.version] = book.release->digest.text;
    }
    CHECK(listed == released);
    CHECK(books.size() == released.size() + 1);  // and the one being written
}

TEST_CASE("every released book has the digest listed, and compiles with today's ontology") {
    auto const opened = shelf();
    for (auto const& book : opened.books()) {
        CAPTURE(book.version);
        auto const result = compiled(book);
        CHECK(result.book->header.version == book.version);
        if (book.release) CHECK(result.book->digest == released.at(book.version));
    }
}

TEST_CASE("0.2.0 differs from 0.1.0 in the overgrowth score beside a naevus simplex") {
    auto const opened = shelf();
    auto const before = compiled(*opened.find("0.1.0")), after = compiled(*opened.find("0.2.0"));
    for (auto const* findings : {"earlobe-creases, nevus-simplex", "helical-pits, nevus-simplex"}) {
        CAPTURE(findings);
        CHECK(genetics(before, findings) == Verdict::suggested);
        CHECK(genetics(after, findings) == Verdict::not_suggested);
    }
    for (auto const* findings : {"earlobe-creases, umbilical-hernia", "macroglossia"}) {
        CAPTURE(findings);
        CHECK(genetics(before, findings) == Verdict::suggested);
        CHECK(genetics(after, findings) == Verdict::suggested);
    }
}

TEST_CASE("no released book carries vignettes: they are not part of its digest") {
    for (auto const& file : below(book_folder + std::string(releases_folder))) {
        CHECK(file->name().find("/vignettes/") == std::string::npos);
    }
}
