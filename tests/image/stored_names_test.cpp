// SPDX-License-Identifier: MIT
#include "ontology/stored_names.h"

#include "books.h"
#include "ontology/names.h"
#include "support/real_book.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

NameIndex small_index() {
    NameIndex names;
    names.add("Low-set ears", 3);
    names.add("webbed neck", 1);
    names.add("ear, low", 3, false);
    names.add("lop ear", 3);
    names.add("Lop-ear", 4);
    return names;
}

}  // namespace

TEST_CASE("stored names answer as the index that they were made of") {
    auto const names = small_index();
    auto const bytes = names.stored();
    auto const stored = NameIndex::from_stored(bytes);
    CHECK(stored.exact("low set EARS") == std::vector<std::uint32_t>{3});
    CHECK(stored.exact("ear, low") == std::vector<std::uint32_t>{3});
    CHECK(stored.exact("lop ear") == std::vector<std::uint32_t>{3, 4});
    CHECK(stored.exact("no such name").empty());
    CHECK(stored.exact("").empty());
    CHECK(stored.resolve("web neck").nearest == names.resolve("web neck").nearest);
    CHECK(stored.printed() == names.printed());
    CHECK(stored.stored() == bytes);
}

TEST_CASE("an index over stored names can grow") {
    auto const bytes = small_index().stored();
    auto stored = NameIndex::from_stored(bytes);
    stored.add("cup ear", 7);
    CHECK(stored.exact("cup-ear") == std::vector<std::uint32_t>{7});
    CHECK(stored.exact("webbed neck") == std::vector<std::uint32_t>{1});
    auto compiled = small_index();
    compiled.add("cup ear", 7);
    CHECK(stored.stored() == compiled.stored());
}

TEST_CASE("no names are stored as well") {
    auto const bytes = NameIndex().stored();
    CHECK(NameIndex::from_stored(bytes).exact("anything").empty());
    CHECK(NameIndex::from_stored(bytes).printed().empty());
}

TEST_CASE("damaged names are refused") {
    auto const bytes = small_index().stored();
    for (std::size_t size = 0; size < bytes.size(); ++size) {
        CAPTURE(size);
        CHECK_THROWS_AS(StoredNames(std::string_view(bytes).substr(0, size)), std::exception);
    }
    auto const longer = bytes + "x";
    CHECK_THROWS_AS(StoredNames{longer}, std::runtime_error);
}

TEST_CASE("every name of the shipped ontology stands for the same things") {
    if (no_image()) return;
    auto const& a = *real_book().ontology;
    auto const& b = *imaged_book().ontology;
    REQUIRE(a.finding_names.printed().size() > 1000);
    CHECK(a.finding_names.printed() == b.finding_names.printed());
    for (auto const& name : a.finding_names.printed()) {
        CAPTURE(name);
        CHECK(a.finding_names.exact(name) == b.finding_names.exact(name));
    }
}

TEST_CASE("every id of the shipped ontology is found, and nothing but ids") {
    if (no_image()) return;
    auto const& a = *real_book().ontology;
    auto const& b = *imaged_book().ontology;
    for (FindingId id = 0; id < a.findings.size(); ++id) {
        CAPTURE(a.findings[id].id.text);
        CHECK(b.finding(a.findings[id].id.text) == id);
        CHECK(b.finding(a.findings[id].label) == a.finding(a.findings[id].label));
    }
    for (MeasureId id = 0; id < a.measures.size(); ++id)
        CHECK(b.measure(a.measures[id].id.text) == id);
    for (StepId id = 0; id < a.steps.size(); ++id) CHECK(b.step(a.steps[id].id.text) == id);
    CHECK(b.finding("no-such-finding") == std::nullopt);
    CHECK(b.measure("") == std::nullopt);
}

TEST_CASE("frames say what the findings say") {
    if (no_image()) return;
    for (auto const* book : {&real_book(), &imaged_book()}) {
        auto const& ontology = *book->ontology;
        REQUIRE(ontology.frames.size() == ontology.findings.size());
        for (FindingId id = 0; id < ontology.findings.size(); ++id) {
            CHECK(ontology.frame(id).step == ontology.findings[id].step);
            CHECK(ontology.frame(id).parent == ontology.findings[id].parent);
            CHECK(ontology.frame(id).sex == ontology.findings[id].sex);
            CHECK(ontology.frame(id).history == ontology.findings[id].history);
        }
    }
}
