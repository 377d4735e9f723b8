// SPDX-License-Identifier: MIT
// Vectors of plain structs are written as they lie in memory, whatever is in the gaps between their
// members, and are refused when they are cut short.
#include "image/plain.h"

#include <cstring>

#include "books.h"
#include "image/fields_compiled.h"
#include "support/real_book.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

/// Two inputs of a gate in memory that held something else before.
std::vector<Weighted> over_old_memory(unsigned char old) {
    std::vector<Weighted> items(2);
    std::memset(static_cast<void*>(items.data()), old, items.size() * sizeof(Weighted));
    for (auto& item : items) {
        item.literal.node = 7;
        item.literal.negated = true;
        item.weight = -3;
    }
    return items;
}

std::string written(std::vector<Weighted> const& items) {
    image::Writer writer;
    writer(items);
    return writer.bytes();
}

std::vector<Weighted> read_back(std::string_view bytes) {
    image::Reader reader(bytes);
    std::vector<Weighted> items;
    reader(items);
    CHECK(reader.left() == 0);
    return items;
}

}  // namespace

TEST_CASE("plain structs read as they were written") {
    std::vector<Weighted> const items{{{1, false}, 10}, {{4000000000u, true}, -1}, {}};
    CHECK(read_back(written(items)) == items);
    CHECK(read_back(written({})).empty());
    CHECK(written(items).size() == sizeof(std::uint32_t) + 3 * sizeof(Weighted));
}

TEST_CASE("what stood in the gaps between members is not written") {
    CHECK(written(over_old_memory(0xff)) == written(over_old_memory(0)));
}

TEST_CASE("plain structs that are cut short are refused") {
    auto const bytes = written({{{1, false}, 10}, {{2, true}, 5}});
    for (std::size_t size = 0; size < bytes.size(); ++size) {
        CAPTURE(size);
        CHECK_THROWS_AS(read_back(bytes.substr(0, size)), image::BadImage);
    }
}

TEST_CASE("structs with members that are not numbers are not plain") {
    CHECK(image::Plain<Literal>);
    CHECK(image::Plain<Fact>);
    CHECK_FALSE(image::Plain<Span>);
    CHECK_FALSE(image::Plain<Word>);
    CHECK_FALSE(image::Plain<CompiledRule>);
    CHECK_FALSE(image::Plain<std::uint32_t>);  // cereal reads these in one piece already
}
