// SPDX-License-Identifier: MIT
#include <algorithm>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "assess/assess.h"
#include "base/nearest.h"
#include "book.h"
#include "common.h"
#include "exit_code.h"
#include "render/check_codes.h"
#include "render/diagnostics_text.h"
#include "render/json.h"
#include "render/sarif.h"
#include "review/check.h"
#include "review/rehearse.h"
#include "terminal.h"
#include "verb.h"

namespace asterism::cli {

namespace {

constexpr auto schema = "asterism.check/1";

nlohmann::ordered_json counts_json(BookCounts const& counts) {
    return {{"findings", counts.findings},
            {"steps", counts.steps},
            {"classes", counts.classes},
            {"rules", counts.rules},
            {"constellations", counts.constellations},
            {"vignettes", counts.vignettes},
            {"sources", counts.sources}};
}

std::string counts_text(BookCounts const& counts) {
    return fmt::format(
        "{} findings, {} steps, {} classes, {} rules, {} constellations, {} vignettes, {} "
        "sources\n",
        counts.findings, counts.steps, counts.classes, counts.rules, counts.constellations,
        counts.vignettes, counts.sources);
}

/// How many of each severity, such as "2 errors, 1 warning, 40 notes".
std::string tally_text(Diagnostics const& diagnostics) {
    auto const all = diagnostics.sorted();
    std::string text;
    for (auto const severity : {Severity::error, Severity::warning, Severity::note}) {
        auto const n = std::count_if(all.begin(), all.end(),
                                     [&](auto const& d) { return d.severity == severity; });
        text += fmt::format("{}{} {}{}", text.empty() ? "" : ", ", n, to_text(severity),
                            n == 1 ? "" : "s");
    }
    return text + "\n";
}

bool found_anything(Diagnostics const& diagnostics) {
    auto const all = diagnostics.sorted();
    return std::any_of(all.begin(), all.end(),
                       [](auto const& d) { return d.severity != Severity::note; });
}

int explain(std::string const& code, bool json) {
    std::vector<CodePage> pages;
    std::vector<std::string> known{"all"};
    for (auto const& page : code_pages()) {
        known.emplace_back(page.code);
        if (code == "all" || code == page.code) pages.push_back(page);
    }
    if (pages.empty()) {
        auto const help = did_you_mean(code, known);
        throw UsageError(fmt::format("no diagnostic has the code `{}`{}{}", code,
                                     help.empty() ? "; --codes lists them" : "; ", help));
    }
    print(json ? json_text(code_pages_json(pages)) : code_pages_text(pages));
    return done;
}

int list_codes() {
    for (auto const& page : code_pages()) print(fmt::format("{:<22} {}\n", page.code, page.means));
    return done;
}

int not_loaded(Diagnostics const& diagnostics, std::string const& format) {
    print_problems(diagnostics, schema, format == "json");
    if (format == "sarif") print(json_text(sarif_log(diagnostics, false, engine_version())));
    return invalid_input;
}

void print_checked(CompiledRulebook const& book, Diagnostics const& diagnostics,
                   std::string const& format) {
    auto const counts = count_book(book);
    report(diagnostics_text(diagnostics));
    if (format == "sarif") print(json_text(sarif_log(diagnostics, true, engine_version())));
    if (format == "json") {
        print(json_text({{"schema", schema},
                         {"counts", counts_json(counts)},
                         {"diagnostics", diagnostics_json(diagnostics)}}));
    }
    if (format != "text") return;
    print(counts_text(counts) + (diagnostics.has_errors() ? "" : "no errors\n") +
          (diagnostics.empty() ? "" : tally_text(diagnostics)));
}

}  // namespace

int check_verb(std::vector<std::string> const& arguments) {
    Options options("check",
                    "  asterism check                     the built-in rulebook\n"
                    "  asterism check rules/newborn       a rulebook in a folder\n"
                    "  asterism check --explain implied   what a code means and how to mend it\n");
    options.value("format", "FORMAT", "text, json or sarif")
        .value("explain", "CODE", "the page of a code; `all` for every page")
        .flag("codes", "list the codes")
        .positional(rulebook_folder, false, "the rulebook's folder")
        .common();
    if (parse_or_help(options, arguments)) return done;
    auto const format = options.format({"text", "json", "sarif"});
    if (options.has("codes")) return list_codes();
    if (options.has("explain")) return explain(options.get("explain"), format == "json");
    Diagnostics diagnostics;
    auto const book = load_book(book_paths(options), diagnostics);
    if (!book) return not_loaded(diagnostics, format);
    check_book(*book, diagnostics);
    report_failed_vignettes(*book, diagnostics);
    print_checked(*book, diagnostics, format);
    return found_anything(diagnostics) ? found_something : done;
}

}  // namespace asterism::cli
