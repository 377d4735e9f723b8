// SPDX-License-Identifier: MIT
// The table of verbs. Everything a verb does stands in its own file.
#include <algorithm>
#include <array>
#include <exception>

#include <fmt/format.h>
#include <spdlog/sinks/stdout_sinks.h>
#include <spdlog/spdlog.h>

#include "assess/assess.h"
#include "base/nearest.h"
#include "book.h"
#include "exit_code.h"
#include "memory.h"
#include "options.h"
#include "render/escape.h"
#include "terminal.h"
#include "verb.h"

namespace {

using namespace asterism;
using namespace asterism::cli;

constexpr std::array verbs{
    Verb{"assess", "which referrals do these findings suggest, how soon, and why", assess_verb},
    Verb{"lookup", "what a finding is, how to look for it, what the book says of it", lookup_verb},
    Verb{"measure", "what a number is: z-score and centile by every norm, and a growth chart",
         measure_verb},
    Verb{"worksheet", "an empty case, head to toe, ready to fill in", worksheet_verb},
    Verb{"check", "is a rulebook sound", check_verb},
    Verb{"schema", "JSON Schemas of the files, for editors", schema_verb},
    Verb{"audit", "do referrals agree with the book of the day: missed, not indicated, late",
         audit_verb},
    Verb{"forecast", "what a book does to the number of referrals, per 1,000 births",
         forecast_verb},
    Verb{"rehearse", "do the vignettes hold, what do they reach, which edits would they notice",
         rehearse_verb},
    Verb{"prove", "do the promises of a rulebook hold for every possible baby", prove_verb},
    Verb{"compare", "what changed between two rulebooks, and for which babies", compare_verb},
    Verb{"release", "freeze a rulebook as a version, or list its versions", release_verb},
    Verb{"handbook", "the rulebook as a booklet", handbook_verb},
    Verb{"convert", "cases from one format into another, with a list of what is lost",
         convert_verb},
    Verb{"completion", "completion of verbs, options and formats for a shell", completion_verb},
};

std::string help_text() {
    std::string text =
        "asterism: which findings of a newborn examination, together, warrant which service, and "
        "why\n\n"
        "Examples\n"
        "  asterism assess baby.yaml\n"
        "  asterism assess --finding 'low-set ears' --finding 'webbed neck' --sex female "
        "--examined all\n"
        "  asterism lookup red reflex\n\n"
        "Verbs (each has --help)\n";
    for (auto const& verb : verbs) text += fmt::format("  {:<11}{}\n", verb.name, verb.summary);
    return text + "\nDecision support for trained clinicians; nothing here is a diagnosis.\n";
}

int version() {
    Diagnostics diagnostics;
    auto const* const book = load_judging_book(BookPaths{}, diagnostics);
    print(fmt::format("asterism {} ({})\n", engine_version(), __VERSION__));
    if (!book) return internal_error;
    auto const& header = book->book->header;
    print(fmt::format("rulebook {} {} sha256 {}\n", header.id.text, header.version,
                      book->book->digest));
    print(fmt::format("ontology {} {} sha256 {}\n", book->ontology->header.id.text,
                      book->ontology->header.version, book->ontology->digest));
    return done;
}

int usage_error(std::string_view message) {
    report(fmt::format("asterism: {}\n", terminal_safe(message)));
    return usage;
}

int run(std::vector<std::string> arguments) {
    if (arguments.empty()) {
        report(help_text());
        return usage;
    }
    auto const name = arguments.front();
    if (name == "--help" || name == "-h" || name == "help") return print(help_text()), done;
    if (name == "--version") return version();
    arguments.erase(arguments.begin());
    auto const verb =
        std::find_if(verbs.begin(), verbs.end(), [&](Verb const& v) { return v.name == name; });
    if (verb != verbs.end()) return verb->run(arguments);
    std::vector<std::string> names;
    for (auto const& known : verbs) names.emplace_back(known.name);
    auto const help = did_you_mean(name, names);
    return usage_error(fmt::format("unknown verb `{}`{}{}", name,
                                   help.empty() ? "; see asterism --help" : "; ", help));
}

}  // namespace

std::vector<Verb> const& asterism::cli::all_verbs() {
    static std::vector<Verb> const all(verbs.begin(), verbs.end());
    return all;
}

int main(int argc, char** argv) {
    keep_memory();
    spdlog::set_default_logger(spdlog::stderr_logger_st("asterism"));
    spdlog::set_level(spdlog::level::off);
    try {
        return run({argv + 1, argv + argc});
    } catch (UsageError const& problem) {
        return usage_error(problem.what());
    } catch (std::exception const& problem) {
        report(fmt::format("asterism: internal error: {}\n", problem.what()));
        return internal_error;
    }
}
