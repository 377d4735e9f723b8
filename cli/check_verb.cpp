// SPDX-License-Identifier: MIT
#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "book.h"
#include "common.h"
#include "exit_code.h"
#include "render/diagnostics_text.h"
#include "render/json.h"
#include "review/check.h"
#include "review/rehearse.h"
#include "terminal.h"
#include "verb.h"

namespace asterism::cli {

namespace {

constexpr auto schema = "asterism.check/1";

nlohmann::ordered_json counts_json(BookCounts const& counts) {
    return {{"findings", counts.findings},   {"steps", counts.steps},
            {"classes", counts.classes},     {"rules", counts.rules},
            {"constellations", counts.constellations}, {"vignettes", counts.vignettes},
            {"sources", counts.sources}};
}

std::string counts_text(BookCounts const& counts) {
    return fmt::format("{} findings, {} steps, {} classes, {} rules, {} constellations, {} vignettes, {} sources\n", counts.findings,
                       counts.steps, counts.classes, counts.rules, counts.constellations, counts.vignettes, counts.sources);
}

}  // namespace

int check_verb(std::vector<std::string> const& arguments) {
    Options options("check",
                    "  asterism check                     the built-in rulebook\n"
                    "  asterism check rules/newborn       a rulebook in a folder\n");
    options.value("format", "FORMAT", "text or json").positional(rulebook_folder, false, "the rulebook's folder").common();
    if (parse_or_help(options, arguments)) return done;
    bool const json = options.format({"text", "json"}) == "json";
    auto const paths = book_paths(options);
    Diagnostics diagnostics;
    auto const book = load_book(paths, diagnostics);
    if (!book) return print_problems(diagnostics, schema, json), invalid_input;
    check_book(*book, diagnostics);
    report_failed_vignettes(*book, diagnostics);
    auto const counts = count_book(*book);
    report(diagnostics_text(diagnostics));
    if (json) {
        print(json_text({{"schema", schema}, {"counts", counts_json(counts)}, {"diagnostics", diagnostics_json(diagnostics)}}));
    } else {
        print(counts_text(counts) + (diagnostics.has_errors() ? "" : "no errors\n"));
    }
    return diagnostics.has_errors() ? found_something : done;
}

}  // namespace asterism::cli
