// SPDX-License-Identifier: MIT
// An image that is stale, damaged or cut short must never be taken for the book.
#include "image/image.h"

#include <set>
#include <string>

#include "books.h"
#include "conditions/read.h"
#include "support/real_book.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

std::string_view first_bytes(double part) {
    auto const all = image::built_in();
    return all.substr(0, static_cast<std::size_t>(static_cast<double>(all.size()) * part));
}

void collect_kinds(CompiledCondition const& compiled, std::set<std::string_view>& kinds) {
    if (!compiled.condition) return;
    kinds.insert(compiled.condition->kind());
    for (auto const& child : compiled.children) collect_kinds(child, kinds);
}

/// The conditions of two books, with their places, must be the same all the way down.
void check_same(CompiledCondition const& a, CompiledCondition const& b,
                Vocabulary const& vocabulary) {
    REQUIRE((a.condition == nullptr) == (b.condition == nullptr));
    if (!a.condition) return;
    CHECK(a.condition->kind() == b.condition->kind());
    CHECK(a.condition->describe(vocabulary) == b.condition->describe(vocabulary));
    CHECK(a.condition->span().place() == b.condition->span().place());
    CHECK(a.condition->span().end == b.condition->span().end);
    CHECK(a.condition->negates() == b.condition->negates());
    CHECK(a.literal == b.literal);
    REQUIRE(a.condition->children().size() == a.children.size());
    REQUIRE(a.children.size() == b.children.size());
    for (std::size_t i = 0; i < a.children.size(); ++i)
        check_same(a.children[i], b.children[i], vocabulary);
}

}  // namespace

TEST_CASE("the built-in image is that of the files on disk") {
    if (no_image()) return;
    auto const& disk = real_book();
    CHECK(imaged_book().book->digest == disk.book->digest);
    CHECK(imaged_book().ontology->digest == disk.ontology->digest);
    CHECK(imaged_book().effective == disk.effective);
    // The bytes also hold every place and every derived number, which no digest covers.
    CHECK(image::write(disk) == image::built_in());
    CHECK(image::write(image::compile_embedded()) == image::built_in());
}

TEST_CASE("writing what was read gives the same bytes") {
    if (no_image()) return;
    CHECK(image::write(imaged_book()) == image::built_in());
}

TEST_CASE("an image of another book is another image") {
    auto changed = real_book();
    auto rulebook = *changed.book;
    rulebook.rules.back().because += " ";
    changed.book = std::make_shared<Rulebook const>(std::move(rulebook));
    CHECK(image::write(changed) != image::write(real_book()));
}

TEST_CASE("an image that is cut short anywhere is refused") {
    if (no_image()) return;
    for (int part = 0; part < 100; ++part) {
        CAPTURE(part);
        CHECK_THROWS_AS(image::read(first_bytes(part / 100.0), image::embedded_text),
                        std::exception);
    }
    auto const all = image::built_in();
    CHECK_THROWS_AS(image::read(all.substr(0, all.size() - 1), image::embedded_text),
                    image::BadImage);
}

TEST_CASE("an image with another start or something behind its end is refused") {
    if (no_image()) return;
    std::string bytes(image::built_in());
    CHECK_THROWS_AS(image::read(bytes + "x", image::embedded_text), image::BadImage);
    bytes.front() = 'A';
    CHECK_THROWS_AS(image::read(bytes, image::embedded_text), image::BadImage);
    CHECK_THROWS_AS(image::read("", image::embedded_text), image::BadImage);
}

TEST_CASE("an image that names a file which is not there is refused") {
    CHECK_THROWS_AS(image::embedded_text("ontology/no-such-file.yaml"), image::BadImage);
    CHECK_FALSE(image::embedded_text("ontology/regions.yaml").empty());
}

TEST_CASE("every kind of condition can be restored") {
    std::set<std::string_view> kinds;
    for (auto const& rule : real_book().rules) collect_kinds(rule.when, kinds);
    for (auto const& derived : real_book().derived) {
        if (derived) collect_kinds(derived->when, kinds);
    }
    auto const restorable = restorable_kinds();
    CHECK(restorable.size() == condition_kinds().size());
    for (auto const kind : kinds) {
        CAPTURE(std::string(kind));
        CHECK(std::ranges::find(restorable, kind) != restorable.end());
    }
    CHECK(restore_condition("no-such-kind", {}) == nullptr);
}

TEST_CASE("conditions keep their kind, words, place and literal") {
    if (no_image()) return;
    auto const vocabulary = real_book().vocabulary();
    auto const& a = real_book();
    auto const& b = imaged_book();
    REQUIRE(a.rules.size() == b.rules.size());
    REQUIRE(a.derived.size() == b.derived.size());
    for (std::size_t i = 0; i < a.rules.size(); ++i)
        check_same(a.rules[i].when, b.rules[i].when, vocabulary);
    for (std::size_t i = 0; i < a.constellations.size(); ++i)
        check_same(a.constellations[i].reached, b.constellations[i].reached, vocabulary);
    for (std::size_t i = 0; i < a.derived.size(); ++i) {
        REQUIRE(a.derived[i].has_value() == b.derived[i].has_value());
        if (a.derived[i]) check_same(a.derived[i]->when, b.derived[i]->when, vocabulary);
    }
}

TEST_CASE("a circuit that was read goes on growing as the compiled one does") {
    if (no_image()) return;
    auto a = real_book().circuit;
    auto b = imaged_book().circuit;
    REQUIRE(a.size() == b.size());
    for (NodeId node = 0; node < a.size(); ++node) {
        if (a.is_fact(node)) continue;
        auto const inputs = a.inputs(node);
        std::vector<Weighted> const same(inputs.begin(), inputs.end());
        // An equal gate is the gate that is there.
        CHECK(b.add_gate(a.threshold(node), same) == a.add_gate(a.threshold(node), same));
    }
    CHECK(a.size() == b.size());
}
