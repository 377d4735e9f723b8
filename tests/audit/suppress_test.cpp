// SPDX-License-Identifier: MIT
#include "audit/suppress.h"

#include <algorithm>
#include <functional>
#include <map>
#include <set>

#include "testing.h"

using namespace asterism::audit;

namespace {

using Cells = std::vector<std::uint64_t>;

/// Every list of `cells` counts with this sum.
void each_split(std::uint64_t sum, std::size_t cells, Cells& so_far,
                std::function<void(Cells const&)> const& visit) {
    if (so_far.size() + 1 == cells) {
        so_far.push_back(sum);
        visit(so_far);
        return so_far.pop_back();
    }
    for (std::uint64_t first = 0; first <= sum; ++first) {
        so_far.push_back(first);
        each_split(sum - first, cells, so_far, visit);
        so_far.pop_back();
    }
}

/// What a reader is told of a table: its total, and each cell that is shown.
Cells told(Cells const& cells, ShownCells const& shown) {
    Cells result{shown.withheld ? 1u : 0u};
    for (std::size_t i = 0; i < cells.size(); ++i) {
        result.push_back(shown.shown[i] ? 1 : 0);
        result.push_back(shown.shown[i] ? cells[i] : 0);
    }
    return result;
}

/// For every text that a reader could be given, which values each hidden cell could have.
struct Possible {
    std::vector<std::set<std::uint64_t>> values;
    void note(Cells const& cells) {
        values.resize(cells.size());
        for (std::size_t i = 0; i < cells.size(); ++i) values[i].insert(cells[i]);
    }
};

std::size_t fewest_values(std::size_t cells, std::uint64_t least, std::uint64_t total) {
    std::map<Cells, Possible> by_text;
    Cells start;
    each_split(total, cells, start, [&](Cells const& table) {
        by_text[told(table, shown_cells(table, least))].note(table);
    });
    std::size_t fewest = SIZE_MAX;
    for (auto const& [text, possible] : by_text) {
        for (std::size_t i = 0; i < cells; ++i) {
            if (text[1 + 2 * i] == 0) fewest = std::min(fewest, possible.values[i].size());
        }
    }
    return fewest;
}

}  // namespace

TEST_CASE("no hidden cell of a table can be worked out, even by who knows the rule and the total") {
    // Every table with two to six cells and small totals: of all tables that would be printed the
    // same, each hidden cell has at least two values. A table without babies has no secret.
    for (std::size_t cells = 2; cells <= 6; ++cells) {
        for (std::uint64_t least = 2; least <= 5; ++least) {
            for (std::uint64_t total = 1; total <= (cells < 5 ? 24u : 16u); ++total) {
                CAPTURE(cells);
                CAPTURE(least);
                CAPTURE(total);
                CHECK(fewest_values(cells, least, total) >= 2);
            }
        }
    }
}

TEST_CASE("a table that is not withheld leaves a small cell every small value") {
    Cells const table{3, 100, 0, 2000, 40, 50000};
    auto const shown = shown_cells(table, 5);
    CHECK_FALSE(shown.withheld);
    CHECK(shown.shown == std::vector<bool>{false, false, false, true, true, true});
    for (std::uint64_t a = 0; a < 5; ++a) {
        for (std::uint64_t b = 0; b < 5; ++b) {
            Cells const other{a, 103 - a - b, b, 2000, 40, 50000};
            CHECK(told(other, shown_cells(other, 5)) == told(table, shown));
        }
    }
}

TEST_CASE("nothing small, nothing hidden; nothing large, nothing shown") {
    CHECK(shown_cells({5, 6, 7}, 5).shown == std::vector<bool>{true, true, true});
    CHECK(shown_cells({0, 1, 4}, 5).withheld);
    CHECK(shown_cells({1, 5, 9}, 5).withheld == true);  // 1 + 5 could only be few things
    CHECK(shown_cells({1, 9, 9}, 5).shown == std::vector<bool>{false, false, true});
}

namespace {

/// Every way of dividing a table over strata.
void each_division(Cells const& whole, std::size_t strata, std::vector<Cells>& so_far,
                   std::function<void(std::vector<Cells> const&)> const& visit) {
    if (so_far.size() + 1 == strata) {
        so_far.push_back(whole);
        visit(so_far);
        return so_far.pop_back();
    }
    Cells part(whole.size(), 0);
    while (true) {
        Cells rest = whole;
        for (std::size_t i = 0; i < part.size(); ++i) rest[i] -= part[i];
        so_far.push_back(part);
        each_division(rest, strata, so_far, visit);
        so_far.pop_back();
        std::size_t at = 0;
        while (at < part.size() && part[at] == whole[at]) part[at++] = 0;
        if (at == part.size()) return;
        ++part[at];
    }
}

std::size_t fewest_values(Cells const& whole, std::size_t strata, std::uint64_t least) {
    std::map<std::vector<Cells>, std::vector<Possible>> by_text;
    std::vector<Cells> start;
    each_division(whole, strata, start, [&](std::vector<Cells> const& tables) {
        auto const shown = shown_strata(tables, least);
        std::vector<Cells> text;
        for (std::size_t k = 0; k < strata; ++k) text.push_back(shown[k] ? tables[k] : Cells{});
        auto& possible = by_text[text];
        possible.resize(strata);
        for (std::size_t k = 0; k < strata; ++k) possible[k].note(tables[k]);
    });
    std::size_t fewest = SIZE_MAX;
    for (auto const& [text, possible] : by_text) {
        for (std::size_t k = 0; k < strata; ++k) {
            if (!text[k].empty()) continue;
            for (auto const& values : possible[k].values) fewest = std::min(fewest, values.size());
        }
    }
    return fewest;
}

}  // namespace

TEST_CASE("no cell of a withheld stratum can be worked out from the whole and the other strata") {
    // Every division of every small table that is shown whole.
    for (std::uint64_t least = 2; least <= 3; ++least) {
        for (std::uint64_t a = least; a <= 8; ++a) {
            for (std::uint64_t b = least; b <= 8; ++b) {
                CAPTURE(least);
                CAPTURE(a);
                CAPTURE(b);
                CHECK(fewest_values(Cells{a, b}, 2, least) >= 2);
                CHECK(fewest_values(Cells{a, b}, 3, least) >= 2);
            }
        }
    }
}
