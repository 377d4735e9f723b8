// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cctype>
#include <fstream>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "assess/growth_curves.h"
#include "assess/measure_report.h"
#include "base/nearest.h"
#include "book.h"
#include "cases/from_arguments.h"
#include "cases/read_case.h"
#include "common.h"
#include "exit_code.h"
#include "render/diagnostics_text.h"
#include "render/growth_chart.h"
#include "render/json.h"
#include "render/measure_report.h"
#include "terminal.h"
#include "verb.h"

namespace asterism::cli {

namespace {

constexpr auto schema = "asterism.measure/1";

Options make_options() {
    Options options(
        "measure",
        "  asterism measure head-circumference 29.5cm --sex female --gestation 37w3d\n"
        "  asterism measure weight=3.1kg length=49cm --sex male --gestation 40w0d --age 14d\n"
        "  asterism measure weight 2610g --sex female --gestation 38w4d --chart weight.svg\n");
    options.positional("words", true, "a measure and its value, or NAME=VALUE")
        .value("sex", "SEX", "female, male or undetermined")
        .value("gestation", "AGE", "at birth, weeks and days: 37w3d")
        .value("age", "AGE", "age when measured: 26h, 14d; default at birth")
        .value("norm", "NORM", "this norm alone")
        .list("norm-table", "NORM=FILE",
              "a norm's table that is not bundled: fenton-2013=fenton.csv")
        .value("chart", "FILE", "write a growth chart (SVG) with the baby's point")
        .value("format", "FORMAT", "text or json")
        .common();
    return options;
}

bool starts_value(std::string const& word) {
    return !word.empty() &&
           (std::isdigit(static_cast<unsigned char>(word.front())) || word.front() == '.');
}

/// `head circumference 29.5 cm` becomes `head circumference=29.5 cm`; words with `=` stay as they
/// are.
std::vector<std::string> name_and_value(std::vector<std::string> const& words) {
    bool const given = std::any_of(words.begin(), words.end(), [](auto const& word) {
        return word.find('=') != std::string::npos;
    });
    if (given) return words;
    auto const value = std::find_if(words.begin(), words.end(), starts_value);
    if (value == words.begin() || value == words.end()) {
        throw UsageError("expected a measure and its value, such as `head-circumference 29.5cm`");
    }
    return {fmt::format("{}={}", fmt::join(words.begin(), value, " "),
                        fmt::join(value, words.end(), " "))};
}

Case read_baby(Options const& options, Ontology const& ontology, Diagnostics& diagnostics) {
    CaseArguments arguments;
    arguments.measures = name_and_value(options.all("words"));
    arguments.sex = options.get("sex");
    arguments.gestation = options.get("gestation");
    arguments.age = options.get("age");
    return read_case(case_from_arguments(arguments), ontology, diagnostics);
}

bool covers_any(norms::Norm const& norm, Ontology const& ontology, Case const& baby) {
    return std::any_of(baby.measures.begin(), baby.measures.end(),
                       [&](MeasuredValue const& measured) {
                           return norm.covers(ontology.measures[measured.measure].id.text);
                       });
}

/// The norm asked for must be one that has a measure given; else those that do are named.
void check_norm(std::string const& wanted, norms::Standards const& standards,
                Ontology const& ontology, Case const& baby) {
    std::vector<std::string> names;
    for (auto const& norm : standards.norms()) {
        if (covers_any(norm, ontology, baby)) names.push_back(norm.description.norm);
    }
    if (wanted.empty() || std::find(names.begin(), names.end(), wanted) != names.end()) return;
    auto help = did_you_mean(wanted, names);
    if (help.empty()) help = fmt::format("those of this measure: {}", fmt::join(names, ", "));
    throw UsageError(fmt::format("`{}` is no norm of this measure; {}", wanted, help));
}

void write_file(std::string const& path, std::string const& text) {
    std::ofstream stream(path, std::ios::binary);
    stream << text;
    stream.flush();
    if (!stream) throw UsageError(fmt::format("the file `{}` cannot be written", path));
}

/// Draws the first measure; false after a report that it has no chart.
bool draw(Options const& options, Ontology const& ontology, norms::Standards const& standards,
          Case const& baby) {
    auto const readings = read_margins(ontology, standards, baby);
    auto const chart =
        growth_chart(ontology, standards, baby, readings.front(), options.get("norm"));
    if (chart) return write_file(options.get("chart"), growth_chart_svg(*chart)), true;
    report(fmt::format("asterism: {}\n", chart.error()));
    return false;
}

}  // namespace

int measure_verb(std::vector<std::string> const& arguments) {
    auto options = make_options();
    if (parse_or_help(options, arguments)) return done;
    bool const json = options.format({"text", "json"}) == "json";
    if (options.all("words").empty())
        throw UsageError("no measure given (see asterism measure --help)");
    Diagnostics diagnostics;
    auto const [ontology, standards] = load_norms(book_paths(options), diagnostics);
    if (!standards) return print_problems(diagnostics, schema, json), invalid_input;
    auto const baby = read_baby(options, *ontology, diagnostics);
    if (diagnostics.has_errors()) return print_problems(diagnostics, schema, json), invalid_input;
    report(diagnostics_text(diagnostics));
    check_norm(options.get("norm"), *standards, *ontology, baby);
    auto const reports = measure_reports(*ontology, *standards, baby, options.get("norm"));
    print(json ? json_text(measure_report_json(reports)) : measure_report_text(reports));
    if (options.has("chart") && !draw(options, *ontology, *standards, baby)) return invalid_input;
    return done;
}

}  // namespace asterism::cli
