// SPDX-License-Identifier: MIT
#include <algorithm>
#include <filesystem>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "base/nearest.h"
#include "book.h"
#include "cases/read_case.h"
#include "common.h"
#include "exit_code.h"
#include "files.h"
#include "release_shelf.h"
#include "render/comparison.h"
#include "render/diagnostics_text.h"
#include "render/json.h"
#include "terminal.h"
#include "verb.h"
#include "yaml/read.h"

namespace asterism::cli {

namespace {

constexpr std::size_t most_babies = 1'000'000;

Options make_options() {
    Options options(
        "compare",
        "  asterism compare 0.1.0 0.2.0                what changed between two versions\n"
        "  asterism compare 0.2.0 rules/newborn        ... and a book in a folder\n"
        "  asterism compare 0.1.0 0.2.0 --cases a.yaml --cases b.yaml\n"
        "                                              ... for these babies only\n"
        "Exit status 4 when anything differs.\n");
    options
        .list("cases", "FILE",
              "judge the case or list of cases in this file; default: the vignettes of both "
              "books and simulated newborns")
        .value("babies", "N", "simulated newborns; default 5000, 0 for none")
        .value("seed", "S", "seed of the simulation; default 1")
        .value("format", "FORMAT", "text, html or json")
        .positional("books", true, "earlier and later book: folders or versions")
        .common();
    return options;
}

/// One case, or a list of them.
void read_cases(std::string const& path, Ontology const& ontology, CaseSet& set,
                Diagnostics& diagnostics) {
    auto const source = read_source(path, diagnostics);
    auto const node = source ? yaml::read_any(source, diagnostics) : std::nullopt;
    if (!node) return;
    auto const add = [&](yaml::Node const& one) {
        auto baby = read_case(one, ontology, diagnostics);
        if (baby.id.empty()) baby.id.text = one.span.place();
        set.babies.push_back({std::move(baby), {}});
    };
    if (!node->is_list()) return add(*node);
    for (auto const& one : node->items) add(one);
}

std::vector<CaseSet> case_sets(Options const& options, CompiledRulebook const& before,
                               CompiledRulebook const& after, Diagnostics& diagnostics) {
    auto const babies = options.whole("babies", 5000, 0, most_babies);
    auto const seed = options.whole("seed", 1, 0, UINT64_MAX);
    auto const files = options.all("cases");
    std::vector<CaseSet> sets;
    if (!files.empty()) {
        CaseSet set{CaseSet::Origin::files, "cases", {}};
        for (auto const& file : files) read_cases(file, *after.ontology, set, diagnostics);
        sets.push_back(std::move(set));
    } else {
        sets.push_back(vignettes_of(before, after, diagnostics));
    }
    bool const simulate = files.empty() || options.has("babies");
    if (simulate && babies > 0) sets.push_back(simulated(after, babies, seed));
    return sets;
}

std::string in_format(std::string const& format, BookComparison const& comparison) {
    if (format == "json") return json_text(comparison_json(comparison));
    return format == "html" ? comparison_html(comparison)
                            : comparison_text(comparison, stdout_has_colour());
}

}  // namespace

int compare_verb(std::vector<std::string> const& arguments) {
    auto options = make_options();
    if (parse_or_help(options, arguments)) return done;
    auto const format = options.format({"text", "html", "json"});
    auto const books = options.all("books");
    if (books.size() != 2)
        throw UsageError(
            "expected two books, the earlier and the later (see asterism compare --help)");
    bool const json = format == "json";
    Diagnostics diagnostics;
    auto const refuse = [&] {
        return print_problems(diagnostics, comparison_schema, json), invalid_input;
    };
    auto const paths = book_paths(options);
    auto const shelf = open_shelf(paths.rulebook, diagnostics);
    auto const ontology = load_ontology(paths, diagnostics);
    auto const before =
        compiled(named_book(books.front(), shelf, diagnostics), ontology, diagnostics);
    auto const after =
        compiled(named_book(books.back(), shelf, diagnostics), ontology, diagnostics);
    if (!before || !after) return refuse();
    auto const sets = case_sets(options, *before, *after, diagnostics);
    if (diagnostics.has_errors()) return refuse();
    report(diagnostics_text(diagnostics));
    auto const comparison = compare(*before, *after, sets);
    print(in_format(format, comparison));
    return comparison.any_change() ? found_something : done;
}

}  // namespace asterism::cli
