// SPDX-License-Identifier: MIT
#include <chrono>
#include <fstream>

#include <fmt/chrono.h>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "base/named.h"
#include "book.h"
#include "case_input.h"
#include "common.h"
#include "exit_code.h"
#include "render/case_writers.h"
#include "render/diagnostics_text.h"
#include "render/escape.h"
#include "render/json.h"
#include "terminal.h"
#include "verb.h"

namespace asterism::cli {

namespace {

using Json = nlohmann::ordered_json;

constexpr auto schema = "asterism.convert/1";

template <class Table>
std::string lines_of(Table const& table) {
    std::string text;
    for (auto const& format : table)
        text += fmt::format("    {:<13}{}\n", format.name, format.summary);
    return text;
}

std::string examples() {
    return "  asterism convert baby.yaml --to phenopacket > baby.json\n"
           "  asterism convert ward.csv --to jsonl --report losses.json\n"
           "  asterism convert packets/ --from phenopacket --hpo hp.json --to csv\n\n"
           "Formats read (--from; else the ending of the file decides)\n" +
           lines_of(case_readers()) + "Formats written (--to)\n" + lines_of(case_writers()) +
           "What the new format cannot say is listed on stderr, and with --report as JSON.\n";
}

Options make_options() {
    Options options("convert", examples());
    options.value("from", "FORMAT", "the format of the files")
        .value("to", "FORMAT", "the format to write")
        .value("hpo", "FILE",
               "an unaltered hp.json or hp.obo (.gz too): terms map along its is-a relations")
        .value("created", "TIME",
               "the time that a phenopacket states as its creation (default: the day of the "
               "examination, else now)")
        .value("report", "FILE", "write what became of every term, and what was lost, as JSON")
        .value("format", "FORMAT", "text or json: how problems are reported")
        .positional("file", true, "the cases")
        .common();
    return options;
}

CaseWriter const& writer_named(std::string const& name) {
    if (auto const* writer = case_writer(name)) return *writer;
    auto const names = names_of(case_writers());
    if (name.empty())
        throw UsageError(fmt::format("no --to; accepted: {}", fmt::join(names, ", ")));
    refuse_format(name, names);
}

std::string now() {
    auto const seconds =
        std::chrono::time_point_cast<std::chrono::seconds>(std::chrono::system_clock::now());
    return fmt::format("{:%Y-%m-%dT%H:%M:%SZ}",
                       fmt::gmtime(std::chrono::system_clock::to_time_t(seconds)));
}

/// Everything that was read, and what stands in the way.
struct Read {
    std::vector<Case> cases;
    Json imports = Json::array();
    std::string text;
    Diagnostics diagnostics;
};

Read gather(std::vector<CaseInput>& inputs, HpoUsed const& hpo, Ontology const& ontology) {
    Read read;
    for (auto& input : inputs) {
        read.diagnostics.append(input.diagnostics);
        for (auto& imported : input.cases) {
            if (input.reader->foreign) {
                auto entry = import_json(imported, ontology, input.reader->name, hpo);
                entry["case"] = imported.baby.id.text;
                read.imports.push_back(std::move(entry));
                read.text += terminal_safe(imported.baby.id.text) + ": " +
                             import_text(imported, ontology, input.reader->name, hpo);
            }
            read.cases.push_back(std::move(imported.baby));
        }
    }
    return read;
}

std::string loss_text(std::vector<NotSaid> const& not_said, std::string_view format) {
    std::string text;
    for (auto const& loss : not_said) {
        text += fmt::format("not said by {}: {}{} ({})\n", format,
                            loss.case_id.empty() ? "" : terminal_safe(loss.case_id) + ": ",
                            terminal_safe(loss.what), loss.why);
    }
    return text;
}

void write_report(std::string const& path, Json const& imports,
                  std::vector<NotSaid> const& not_said, std::string_view to, std::size_t cases) {
    Json document{{"schema", schema},
                  {"to", to},
                  {"cases", cases},
                  {"read", imports},
                  {"not_said", Json::array()}};
    for (auto const& loss : not_said)
        document["not_said"].push_back(
            {{"case", loss.case_id}, {"what", loss.what}, {"why", loss.why}});
    std::ofstream stream(path, std::ios::binary);
    stream << json_text(document);
    if (!stream.flush()) throw UsageError(fmt::format("the report `{}` cannot be written", path));
}

}  // namespace

int convert_verb(std::vector<std::string> const& arguments) {
    auto options = make_options();
    if (parse_or_help(options, arguments)) return done;
    bool const json = options.format({"text", "json"}) == "json";
    auto const& writer = writer_named(options.get("to"));
    if (options.has("from")) reader_named(options.get("from"));
    auto const files = options.all("file");
    if (files.empty()) throw UsageError("no files given (see asterism convert --help)");
    Diagnostics diagnostics;
    auto const ontology = load_judging_ontology(book_paths(options), diagnostics);
    auto const hpo = options.has("hpo") ? load_hpo(options.get("hpo"), diagnostics) : std::nullopt;
    if (!ontology || diagnostics.has_errors())
        return print_problems(diagnostics, schema, json), invalid_input;
    auto inputs = read_case_files(files, options.get("from"), {*ontology, hpo ? &*hpo : nullptr});
    auto read = gather(inputs, hpo_used(hpo, *ontology), *ontology);
    if (read.diagnostics.has_errors())
        return print_problems(read.diagnostics, schema, json), invalid_input;
    report(diagnostics_text(read.diagnostics) + read.text);
    if (!writer.many && read.cases.size() != 1)
        throw UsageError(
            fmt::format("{} holds one case, the files hold {}; write jsonl, csv or phenopacket",
                        writer.name, read.cases.size()));
    std::vector<NotSaid> not_said;
    print(writer.write(
        read.cases, {*ontology, hpo ? &*hpo : nullptr, options.get("created", now())}, not_said));
    report(loss_text(not_said, writer.name));
    if (options.has("report"))
        write_report(options.get("report"), read.imports, not_said, writer.name, read.cases.size());
    return done;
}

}  // namespace asterism::cli
