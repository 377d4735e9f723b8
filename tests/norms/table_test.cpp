// SPDX-License-Identifier: MIT
#include "norms/table.h"

#include "testing.h"

using namespace asterism::norms;

namespace {

TableErrors errors_of(std::string_view text) {
    auto const table = parse_table(text);
    return table ? TableErrors{} : table.error();
}

}  // namespace

TEST_CASE("a table has a header, rows, and the line of each row") {
    auto const table = parse_table("a,b\n1,2\n3,4\n");
    REQUIRE(table);
    CHECK(table->header == std::vector<std::string>{"a", "b"});
    REQUIRE(table->rows.size() == 2);
    CHECK(table->rows[1].cells == std::vector<std::string>{"3", "4"});
    CHECK(table->rows[1].line == 3);
    CHECK(table->column("b") == 1);
    CHECK_FALSE(table->column("c"));
}

TEST_CASE("line ends, a byte order mark, blank lines and a missing last line end do not matter") {
    for (auto const* text : {"a,b\n1,2", "a,b\r\n1,2\r\n", "a,b\r1,2\r",
                             "\xEF\xBB\xBF"
                             "a,b\n1,2\n"}) {
        auto const table = parse_table(text);
        REQUIRE(table);
        CHECK(table->header.front() == "a");
        REQUIRE(table->rows.size() == 1);
        CHECK(table->rows[0].line == 2);
        CHECK(table->rows[0].cells.back() == "2");
    }
    auto const spaced = parse_table("a,b\n\n\n1,2\n");
    REQUIRE(spaced);
    CHECK(spaced->rows[0].line == 4);
}

TEST_CASE("quoted cells may hold commas and doubled quotes") {
    auto const table = parse_table("a,b\n\"x, y\",\"say \"\"z\"\"\"\n");
    REQUIRE(table);
    CHECK(table->rows[0].cells == std::vector<std::string>{"x, y", "say \"z\""});
}

TEST_CASE("an empty cell is a cell") {
    auto const table = parse_table("a,b,c\n,,\n");
    REQUIRE(table);
    CHECK(table->rows[0].cells == std::vector<std::string>{"", "", ""});
}

TEST_CASE("a table without rows is refused") {
    CHECK(errors_of("") == TableErrors{{1, "the table has no rows"}});
    CHECK(errors_of("a,b\n") == TableErrors{{1, "the table has no rows"}});
}

TEST_CASE("every row of another length is named with its line") {
    auto const errors = errors_of("a,b\n1\n1,2\n1,2,3\n");
    REQUIRE(errors.size() == 2);
    CHECK(errors[0] == TableError{2, "expected 2 cells as in the header, found 1"});
    CHECK(errors[1] == TableError{4, "expected 2 cells as in the header, found 3"});
}

TEST_CASE("a column named twice is refused") {
    CHECK(errors_of("a,b,a\n1,2,3\n") == TableErrors{{1, "column `a` is named twice"}});
}

TEST_CASE("broken quoting is refused at its line") {
    auto const stray = errors_of("a,b\n1,2\n3,x\"y\n");
    REQUIRE(stray.size() == 1);
    CHECK(stray[0] == TableError{3, "a quote inside a cell is not doubled"});
    auto const open = errors_of("a,b\n1,\"2\n");
    REQUIRE(open.size() == 1);
    CHECK(open[0].message == "a quoted cell is not closed");
}
