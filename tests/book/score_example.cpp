// SPDX-License-Identifier: MIT
#include "score_example.h"

#include <algorithm>
#include <string>
#include <string_view>

#include <fmt/format.h>

#include "assess/facts.h"
#include "shipped_book.h"
#include "testing.h"

namespace asterism::testing {

namespace {

constexpr double tenths = 10;

CompiledTally const& tally_of(CompiledRulebook const& book, std::string_view id) {
    auto const found = std::find_if(book.tallies.begin(), book.tallies.end(),
                                    [&](CompiledTally const& t) { return t.id == id; });
    REQUIRE_MESSAGE(found != book.tallies.end(), "the book has no tally ", std::string(id));
    return *found;
}

CompiledConstellation const& constellation_of(CompiledRulebook const& book, std::string_view id) {
    auto const found =
        std::find_if(book.constellations.begin(), book.constellations.end(),
                     [&](CompiledConstellation const& c) { return book.syntax(c).id.text == id; });
    REQUIRE_MESSAGE(found != book.constellations.end(), "the book has no constellation ",
                    std::string(id));
    return *found;
}

}  // namespace

void check(ScoreExample const& example) {
    auto const& book = shipped_book();
    auto const text =
        fmt::format("examined: all\nfindings: [{}]\n{}\n", example.findings, example.also);
    std::string const tally = example.tally;
    CAPTURE(tally);
    CAPTURE(text);
    auto const baby = case_from(text);
    auto const facts = evaluate(book, baby, Rest::unknown);
    auto const points = sum(tally_of(book, tally).inputs, facts.values).low;
    CHECK(static_cast<double>(points) / tenths == doctest::Approx(example.points));
    auto const& constellation = constellation_of(book, example.constellation);
    auto const reached = value_of(constellation.reached.literal, facts.values);
    CHECK(to_text(reached) == to_text(truth(example.reached)));
}

double possible_points(char const* constellation) {
    auto const& book = shipped_book();
    Tenths total = 0;
    auto const& tally = book.tallies[constellation_of(book, constellation).total];
    for (auto const& item : tally.items) total += item.points;
    return static_cast<double>(total) / tenths;
}

}  // namespace asterism::testing
