// SPDX-License-Identifier: MIT
#include <algorithm>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "embedded/embedded.h"
#include "testing.h"

using asterism::embedded::File;
using asterism::embedded::files;
using namespace std::string_view_literals;

namespace {

std::string bytes_of(std::string_view name) {
    std::ifstream in(std::filesystem::path(HARD_FOLDER) / name, std::ios::binary);
    REQUIRE(in.is_open());
    return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

std::string_view embedded(std::string_view name) {
    auto const found = std::ranges::find(files(), name, &File::name);
    REQUIRE(found != files().end());
    return found->text;
}

}  // namespace

TEST_CASE("only the files that match a pattern are embedded, sorted by name") {
    std::vector<std::string> names;
    for (File const& file : files()) names.emplace_back(file.name);
    CHECK(names == std::vector<std::string>{"blank.csv", "cr.yaml", "empty.yaml", "long.yaml",
                                            "marks.yaml"});
}

TEST_CASE("quotes, backslashes, trigraphs and CMake's own marks come through unchanged") {
    CHECK(embedded("marks.yaml") == bytes_of("marks.yaml"));
    CHECK(embedded("marks.yaml").find("${CMAKE_VERSION} @CMAKE_VERSION@") !=
          std::string_view::npos);
    CHECK(embedded("marks.yaml").ends_with('\\'));
}

TEST_CASE("carriage returns and NULs come through unchanged") {
    CHECK((embedded("cr.yaml") == bytes_of("cr.yaml")));
    CHECK(embedded("cr.yaml").starts_with("one\r\ntwo\rthree \"?\0 four"sv));
}

TEST_CASE("empty and blank files come through unchanged") {
    CHECK(embedded("empty.yaml").empty());
    CHECK(embedded("blank.csv") == "\n\n;\n");
}

TEST_CASE("a file of many lines with one very long line comes through unchanged") {
    CHECK(embedded("long.yaml").size() > 700'000);
    CHECK((embedded("long.yaml") == bytes_of("long.yaml")));
}
