// SPDX-License-Identifier: MIT
#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "answer.h"
#include "assess/assess.h"
#include "assess_batch.h"
#include "assess_records.h"
#include "base/named.h"
#include "base/nearest.h"
#include "book.h"
#include "case_input.h"
#include "cases/from_arguments.h"
#include "cases/read_case.h"
#include "common.h"
#include "exit_code.h"
#include "files.h"
#include "refusal.h"
#include "render/assessment_writers.h"
#include "render/diagnostics_text.h"
#include "render/json.h"
#include "terminal.h"
#include "verb.h"

namespace asterism::cli {

namespace {

constexpr auto schema = "asterism.assessment/1";

Options make_options() {
    static auto const input_doc = "how to read the files and folders: " + reader_names();
    static auto const format_doc =
        fmt::format("{}", fmt::join(names_of(assessment_writers()), ", "));
    Options options(
        "assess",
        "  asterism assess baby.yaml                 a case file, YAML or JSON; - reads stdin\n"
        "  asterism assess --finding 'low-set ears; right' --finding 'webbed neck' \\\n"
        "      --sex female --gestation 38w4d --examined all\n"
        "  asterism assess baby.yaml --why three-independent-minor-variants\n"
        "  asterism assess --input phenopacket packets/ --hpo hp.json\n"
        "  asterism assess baby.yaml --format fhir\n"
        "  asterism assess year.jsonl --batch > year.out   many cases, one JSON line each\n");
    options
        .list("finding,f", "NAME",
              "present; qualifiers after semicolons: 'low-set ears; right; familial'")
        .list("absent", "NAME", "looked for and not there")
        .list("unsure", "NAME", "could not be decided; counts as not examined")
        .list("measure,m", "NAME=VALUE", "a measure with its unit: 'head-circumference=31.0 cm'")
        .list("history", "NAME", "a history item, or 'none'")
        .list("examined,e", "STEP",
              "'all', an exam step, a region, or 'except=STEP'; commas allowed")
        .value("sex", "SEX", "female, male or undetermined")
        .value("gestation", "AGE", "weeks and days: 38w4d")
        .value("age", "AGE", "age at the examination: 26h, 3d")
        .value("born", "DATE", "date of birth; gives follow-up dates")
        .list("norm-table", "NORM=FILE",
              "a norm's table that is not bundled: fenton-2013=fenton.csv")
        .value("case", "ID", "a code for the case; never a name")
        .value("as-of", "DATE", "judge by the rulebook in force on this day; default: the newest")
        .value("input", "FORMAT", input_doc.c_str())
        .value("hpo", "FILE",
               "an unaltered hp.json or hp.obo (.gz too): terms map along its is-a relations")
        .value("format", "FORMAT", format_doc.c_str())
        .value("detail", "HOW-MUCH", "brief (at most 40 lines) or full")
        .value("why", "RULE", "show a rule's conditions with the value seen at each")
        .positional("file", true, "the case");
    add_batch_options(options);
    options.common();
    return options;
}

CaseArguments arguments_of(Options const& options) {
    CaseArguments a;
    a.findings = options.all("finding");
    a.absent = options.all("absent");
    a.unsure = options.all("unsure");
    a.measures = options.all("measure");
    a.history = options.all("history");
    a.examined = options.all("examined");
    a.id = options.get("case");
    a.sex = options.get("sex");
    a.gestation = options.get("gestation");
    a.age = options.get("age");
    a.born = options.get("born");
    return a;
}

Detail detail_of(Options const& options) {
    auto const wanted = options.get("detail", "brief");
    if (wanted != "brief" && wanted != "full") {
        throw UsageError(fmt::format("unknown detail `{}`; accepted: brief, full", wanted));
    }
    return wanted == "full" ? Detail::full : Detail::brief;
}

Case read_the_case(Options const& options, Ontology const& ontology, Diagnostics& diagnostics) {
    auto const file = options.all("file");
    auto const arguments = arguments_of(options);
    if (file.size() > 1) throw UsageError("too many arguments");
    if (!file.empty() && !arguments.empty())
        throw UsageError("give either a case file or findings as options, not both");
    if (file.empty() && arguments.empty())
        throw UsageError(
            "no case: give a file, - for stdin, or --finding (see asterism assess --help)");
    if (file.empty()) return read_case(case_from_arguments(arguments), ontology, diagnostics);
    if (file.front() == "-" && stdin_is_terminal())
        report("reading a case from the terminal; end with ctrl-d\n");
    auto const source = read_source(file.front(), diagnostics);
    return source ? read_case(source, ontology, diagnostics) : empty_case(ontology);
}

/// No verdict, but red flags that were recognised come first.
int refuse(CompiledRulebook const& book, Case const& baby, Diagnostics const& diagnostics,
           bool json) {
    auto const flags = recognised_red_flags(book, baby);
    auto const text = red_flag_text(flags);
    if (json)
        print(json_text(refusal_json(flags, diagnostics)));
    else if (!text.empty())
        print(text);
    report_refusal(diagnostics);
    return invalid_input;
}

int explain(CompiledRulebook const& book, Case const& baby, std::string const& rule, bool json) {
    auto const lines = trace(book, baby, rule);
    if (lines.empty()) {
        std::vector<std::string> names;
        for (auto const& known : book.book->rules) names.push_back(known.id.text);
        throw UsageError(fmt::format("unknown rule `{}`; {}", rule, did_you_mean(rule, names)));
    }
    if (!json) return print(trace_text(lines, rule)), done;
    nlohmann::ordered_json document{{"schema", "asterism.trace/1"}, {"rule", rule}};
    for (auto const& line : lines) {
        document["conditions"].push_back({{"depth", line.depth},
                                          {"condition", line.text},
                                          {"value", to_text(line.value)},
                                          {"seen", line.seen},
                                          {"place", line.place}});
    }
    return print(json_text(document)), done;
}

}  // namespace

int assess_verb(std::vector<std::string> const& arguments) {
    auto options = make_options();
    if (parse_or_help(options, arguments)) return done;
    if (is_batch(options)) return assess_batch(options);
    auto const& writer = *assessment_writer(options.format(names_of(assessment_writers())));
    bool const json = writer.name == "json";
    TextOptions const text{stdout_has_colour(), detail_of(options)};
    if (options.has("hpo") && !options.has("input"))
        throw UsageError("--hpo serves records with HPO terms; say which with --input");
    Diagnostics diagnostics;
    auto const* const book = load_judging_book(book_paths(options), diagnostics);
    if (!book) return print_problems(diagnostics, schema, json), invalid_input;
    if (options.has("input")) return assess_records(options, *book, writer, text);
    auto const baby = read_the_case(options, *book->ontology, diagnostics);
    if (diagnostics.has_errors()) return refuse(*book, baby, diagnostics, json);
    report(diagnostics_text(diagnostics));
    if (options.has("why")) return explain(*book, baby, options.get("why"), json);
    auto const assessment = answer_for(writer, text, *book, baby);
    print(writer.write({assessment, baby, *book, text}));
    return done;
}

}  // namespace asterism::cli
