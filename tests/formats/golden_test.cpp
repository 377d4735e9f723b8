// SPDX-License-Identifier: MIT
// Every writer on three babies of the small book. After a wanted change, one command writes the
// golden files anew, and `git diff` shows what changed:
//   ASTERISM_UPDATE_GOLDEN=1 build/tests/formats/test_formats --source-file=*golden_test.cpp
#include <algorithm>
#include <cstdlib>
#include <fstream>

#include "format_book.h"
#include "testing.h"

using namespace asterism::testing;

namespace {

void compare(std::string const& path, std::string const& text) {
    if (std::getenv("ASTERISM_UPDATE_GOLDEN")) std::ofstream(path, std::ios::binary) << text;
    INFO(path);
    auto const expected = lines_of(file_text(path));
    auto const found = lines_of(text);
    REQUIRE_FALSE(expected.empty());
    for (std::size_t i = 0; i < std::min(expected.size(), found.size()); ++i) {
        INFO("line ", i + 1);
        REQUIRE(found[i] == expected[i]);
    }
    CHECK(found.size() == expected.size());
}

}  // namespace

TEST_CASE("each writer says what its golden file says") {
    for (auto const* name : {"quiet", "two-services", "everything"}) {
        auto const baby = golden_case(name);
        for (auto const& writer : writers()) {
            compare(std::string("tests/formats/golden/") + name + "." + writer.name,
                    writer.write(baby));
        }
    }
}

TEST_CASE("the same baby gives the same bytes") {
    for (auto const& writer : writers()) {
        CHECK(writer.write(golden_case("everything")) == writer.write(golden_case("everything")));
    }
}
