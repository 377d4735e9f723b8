// SPDX-License-Identifier: MIT
#include <filesystem>

#include <fmt/format.h>
#include <fmt/ranges.h>
#include <nlohmann/json.hpp>

#include "book.h"
#include "common.h"
#include "exit_code.h"
#include "release_shelf.h"
#include "render/forecast_report.h"
#include "render/json.h"
#include "terminal.h"
#include "verb.h"

namespace asterism::cli {

namespace {

constexpr std::uint64_t most_samples = 100'000'000, most_births = 1'000'000'000;

Options make_options() {
    Options options(
        "forecast",
        "  asterism forecast                          referrals per 1,000 births by the built-in "
        "book\n"
        "  asterism forecast rules/newborn --against 0.1.0 --births 2500\n"
        "                                             what adopting a book would change in a "
        "year\n");
    options.value("against", "OLD", "an earlier book: a folder or a version")
        .value("births", "N", "tell figures for so many births; default 1000")
        .value("samples", "N", "simulated newborns; default 100000")
        .value("seed", "S", "seed of the simulation; default 1")
        .value("format", "FORMAT", "text, json or csv")
        .positional("book", false, "a folder or a version; default: the built-in book")
        .common();
    return options;
}

}  // namespace

int forecast_verb(std::vector<std::string> const& arguments) {
    auto options = make_options();
    if (parse_or_help(options, arguments)) return done;
    auto const format = options.format({"text", "json", "csv"});
    auto const samples = options.whole("samples", 100'000, 1, most_samples);
    auto const births = options.whole("births", 1000, 1, most_births);
    auto const seed = options.whole("seed", 1, 0, UINT64_MAX);
    auto const paths = book_paths(options);
    auto const named = options.all("book");
    if (!named.empty() && (!paths.rulebook.empty() || !paths.as_of.empty()))
        throw UsageError("give the book once");
    Diagnostics diagnostics;
    auto const ontology = load_ontology(paths, diagnostics);
    auto const book = compiled(
        named.empty() ? load_rulebook(paths, diagnostics)
                      : named_book(named.front(), open_shelf({}, diagnostics), diagnostics),
        ontology, diagnostics);
    auto const against = options.get("against");
    auto const earlier =
        against.empty()
            ? std::nullopt
            : compiled(named_book(against, open_shelf(paths.rulebook, diagnostics), diagnostics),
                       ontology, diagnostics);
    if (!book || (!against.empty() && !earlier))
        return print_problems(diagnostics, forecast_schema, format == "json"), invalid_input;
    auto const* const old = earlier ? &*earlier : nullptr;
    auto const result = audit::forecast(*book, old, NewbornModel{}, samples, seed);
    ForecastReport const report{result, births, *book, old};
    print(format == "json"  ? json_text(forecast_json(report))
          : format == "csv" ? forecast_csv(report)
                            : forecast_text(report, stdout_has_colour()));
    return done;
}

}  // namespace asterism::cli
