// SPDX-License-Identifier: MIT
#include <set>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "base/nearest.h"
#include "base/number.h"
#include "book.h"
#include "common.h"
#include "exit_code.h"
#include "render/diagnostics_text.h"
#include "render/json.h"
#include "render/rehearsal.h"
#include "terminal.h"
#include "verb.h"

namespace asterism::cli {

namespace {

double number(Options const& options, char const* name, double low, double high, double otherwise) {
    auto const text = options.get(name);
    if (text.empty()) return otherwise;
    auto const value = parse_decimal(text);
    if (!value || value->value < low || value->value > high)
        throw UsageError(
            fmt::format("expected --{} from {} to {}, found `{}`", name, low, high, text));
    return value->value;
}

Options rehearse_options() {
    Options options("rehearse",
                    "  asterism rehearse                     every vignette of the built-in book\n"
                    "  asterism rehearse rules/newborn --min-coverage 100\n"
                    "  asterism rehearse rules/newborn --format junit > vignettes.xml\n"
                    "  asterism rehearse rules/newborn --mutants --jobs 2\n"
                    "                                        does a vignette notice each single "
                    "edit of the book\n"
                    "  asterism rehearse rules/newborn --mutants --part low-set-ears\n");
    options.value("format", "FORMAT", "text, json or junit")
        .value("min-coverage", "PERCENT", "conditions seen met and not met, at least; default 0")
        .flag("mutants", "make every single edit of the book and look for a vignette that notices")
        .value("part", "ID", "only edits of this rule, finding, tally, constellation or key")
        .value("sample", "N", "only so many mutants, drawn by --seed")
        .value("seed", "N", "default 1")
        .value("jobs", "N", "threads (default: all cores); the output is the same")
        .positional(rulebook_folder, false, "the rulebook's folder")
        .common();
    return options;
}

struct Wanted {
    std::string format;
    double min_coverage = 0;
    bool mutants = false;
    TrialOptions trial;
    BookPaths paths;
};

Wanted wanted(Options const& options) {
    Wanted result;
    result.format = options.format({"text", "json", "junit"});
    result.min_coverage = number(options, "min-coverage", 0, 100, 0);
    result.mutants = options.has("mutants");
    result.trial.part = options.get("part");
    result.trial.sample = options.whole("sample", 0, 1, 1'000'000);
    result.trial.seed = options.whole("seed", 1, 0, UINT64_MAX);
    result.trial.jobs = options.jobs();
    for (auto const* name : {"part", "sample", "seed", "jobs"}) {
        if (!result.mutants && !options.get(name).empty())
            throw UsageError(fmt::format("--{} goes with --mutants", name));
    }
    result.paths = book_paths(options);
    return result;
}

std::string printed(RehearsalView const& view, std::string const& format,
                    Diagnostics const& diagnostics) {
    if (format == "junit") return rehearsal_junit(view);
    if (format != "json") return rehearsal_text(view);
    auto document = rehearsal_json(view);
    document["diagnostics"] = diagnostics_json(diagnostics);
    return json_text(document);
}

/// A part that is not there would try nothing and look like a book without survivors.
Trial trial_of(CompiledRulebook const& book, Rehearsal const& rehearsal,
               TrialOptions const& options) {
    auto trial = try_mutants(book, rehearsal.vignettes, options);
    if (options.part.empty() || trial.made > 0) return trial;
    std::set<std::string> parts;
    for (auto const& one : mutants(book)) parts.insert(one.part);
    auto const help = did_you_mean(options.part, {parts.begin(), parts.end()});
    throw UsageError(fmt::format("nothing to edit is called `{}`{}", options.part,
                                 help.empty() ? "" : "; " + help));
}

}  // namespace

int rehearse_verb(std::vector<std::string> const& arguments) {
    auto options = rehearse_options();
    if (parse_or_help(options, arguments)) return done;
    auto const want = wanted(options);
    Diagnostics diagnostics;
    auto const book = load_book(want.paths, diagnostics);
    if (!book)
        return print_problems(diagnostics, rehearse_schema, want.format == "json"), invalid_input;
    auto const rehearsal = rehearse_all(*book, diagnostics);
    report(diagnostics_text(diagnostics));
    auto const trial =
        want.mutants ? std::optional(trial_of(*book, rehearsal, want.trial)) : std::nullopt;
    auto const vocabulary = book->vocabulary();
    print(printed({rehearsal, trial ? &*trial : nullptr, vocabulary}, want.format, diagnostics));
    bool const survivors = trial && trial->count(MutantFate::survived) > 0;
    bool const short_of = rehearsal.coverage.percent() < want.min_coverage;
    if (short_of)
        report(fmt::format("coverage {:.2f} % is under {} %\n", rehearsal.coverage.percent(),
                           want.min_coverage));
    bool const all_well =
        !diagnostics.has_errors() && failing(rehearsal) == 0 && !short_of && !survivors;
    return all_well ? done : found_something;
}

}  // namespace asterism::cli
