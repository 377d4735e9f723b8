// SPDX-License-Identifier: MIT
// Parts of an image are read when they are asked for, and refused when they are damaged.
#include "image/parts.h"

#include "books.h"
#include "image/fields_base.h"
#include "support/real_book.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

std::string three_words() {
    image::Writer writer;
    LazyList<std::string> const words{"low", "", "ears"};
    writer(words);
    return writer.bytes();
}

LazyList<std::string> words_of(std::string_view bytes) {
    image::Reader reader(bytes);
    LazyList<std::string> words;
    reader(words);
    CHECK(reader.left() == 0);
    return words;
}

/// The bytes with one of the numbers at their start replaced: count, three ends, size.
std::string with_number(std::string bytes, std::size_t index, std::uint32_t number) {
    std::memcpy(bytes.data() + index * sizeof number, &number, sizeof number);
    return bytes;
}

}  // namespace

TEST_CASE("parts read as they were written") {
    auto const bytes = three_words();
    auto const words = words_of(bytes);
    CHECK(std::vector<std::string>(words.begin(), words.end()) ==
          std::vector<std::string>{"low", "", "ears"});
    image::Writer writer;
    writer(words);
    CHECK(writer.bytes() == bytes);
}

TEST_CASE("an empty list has no parts") {
    image::Writer writer;
    writer(LazyList<std::string>{});
    CHECK(words_of(writer.bytes()).empty());
}

TEST_CASE("parts that are cut short are refused at once") {
    auto const bytes = three_words();
    for (std::size_t size = 0; size < bytes.size(); ++size) {
        CAPTURE(size);
        auto const cut = std::string_view(bytes).substr(0, size);
        CHECK_THROWS_AS(words_of(cut), image::BadImage);
    }
}

TEST_CASE("a part out of place is refused when it is asked for") {
    auto const bytes = three_words();
    for (auto const end : {0u, 1u, 6u, 1000u, 0xFFFFFFFFu}) {
        CAPTURE(end);
        auto const damaged = with_number(bytes, 1, end);
        auto const words = words_of(damaged);
        CHECK_THROWS_AS(words[0], image::BadImage);
        CHECK(words[2] == "ears");
    }
    auto const damaged = with_number(bytes, 3, 1000);
    CHECK_THROWS_AS(words_of(damaged)[2], image::BadImage);
}

TEST_CASE("a part that holds more than its thing is refused") {
    image::Writer writer;
    writer(LazyList<std::string>{"ears"});
    auto bytes = writer.bytes();
    // count, end, size; then the length of the word, now one too small.
    bytes = with_number(bytes, 3, 3);
    CHECK_THROWS_AS(words_of(bytes)[0], image::BadImage);
}

TEST_CASE("reading the image makes no rule and no finding") {
    if (no_image()) return;
    auto const book = image::read(image::built_in(), image::embedded_text);
    auto const again = book;
    CHECK(&std::as_const(*again.book).rules[0] == &std::as_const(*book.book).rules[0]);
    CHECK(book.ontology->findings.size() == real_book().ontology->findings.size());
}
