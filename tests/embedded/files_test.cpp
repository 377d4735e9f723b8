// SPDX-License-Identifier: MIT
#include "embedded/embedded.h"

#include "testing.h"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <set>
#include <string>

namespace fs = std::filesystem;
using asterism::embedded::File;
using asterism::embedded::files;

namespace {

std::string bytes_of(fs::path const& path) {
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

std::set<std::string> names_on_disk() {
    std::set<std::string> names;
    for (char const* folder : {"ontology", "rules"}) {
        for (auto const& entry : fs::recursive_directory_iterator(folder)) {
            auto const extension = entry.path().extension();
            bool const changes = extension == ".md" && std::string(folder) == "rules";
            bool const data = extension == ".yaml" || extension == ".csv" || changes;
            if (entry.is_regular_file() && data) {
                names.insert(entry.path().generic_string());
            }
        }
    }
    return names;
}

}  // namespace

TEST_CASE("the embedded names are exactly the files on disk") {
    std::set<std::string> embedded;
    for (File const& file : files()) {
        embedded.emplace(file.name);
    }
    CHECK(embedded == names_on_disk());
    CHECK(embedded.size() == files().size());
    CHECK(embedded.contains("rules/newborn/book.yaml"));
    CHECK(embedded.contains("ontology/regions.yaml"));
}

TEST_CASE("every embedded file has the bytes of the file on disk") {
    REQUIRE_FALSE(files().empty());
    for (File const& file : files()) {
        CHECK_MESSAGE((file.text == bytes_of(std::string(file.name))), file.name,
                      " differs from the file on disk (if it was edited just now, build again)");
    }
}

TEST_CASE("embedded files stand in ascending order of name") {
    CHECK(files().size() > 1);
    CHECK(std::ranges::is_sorted(files(), {}, &File::name));
}
