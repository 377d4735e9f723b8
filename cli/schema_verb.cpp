// SPDX-License-Identifier: MIT
#include <algorithm>
#include <filesystem>
#include <fstream>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "base/nearest.h"
#include "book.h"
#include "common.h"
#include "exit_code.h"
#include "render/json.h"
#include "render/schema_files.h"
#include "terminal.h"
#include "verb.h"

namespace asterism::cli {

namespace {

constexpr auto schema = "asterism.schema/1";

SchemaFile const& wanted(std::string const& name) {
    std::vector<std::string> known;
    for (auto const& file : schema_files()) {
        if (file.name == name) return file;
        known.emplace_back(file.name);
    }
    auto const help = did_you_mean(name, known);
    throw UsageError(
        fmt::format("no kind of file is called `{}`; {}", name,
                    help.empty() ? fmt::format("accepted: {}", fmt::join(known, ", ")) : help));
}

int write_all(std::string const& folder, CompiledRulebook const& book) {
    std::filesystem::create_directories(folder);
    for (auto const& file : schema_files()) {
        auto const path = fmt::format("{}/{}.schema.json", folder, file.name);
        std::ofstream stream(path, std::ios::binary);
        stream << json_text(schema_of(file, book));
        stream.close();
        if (!stream) throw UsageError(fmt::format("`{}` cannot be written", path));
        print(path + "\n");
    }
    return done;
}

}  // namespace

int schema_verb(std::vector<std::string> const& arguments) {
    Options options(
        "schema",
        "  asterism schema rulebook               a JSON Schema (draft-07) for editors\n"
        "  asterism schema --into rules/schema    one file for each kind\n");
    options.value("format", "FORMAT", "json")
        .value("into", "DIR", "write the schemas of all kinds into this folder")
        .positional("kind", false, "rulebook, vignettes, releases, ontology or case")
        .common();
    if (parse_or_help(options, arguments)) return done;
    options.format({"json"});
    auto const kinds = options.all("kind");
    auto const& kind = wanted(kinds.empty() ? "rulebook" : kinds.front());
    Diagnostics diagnostics;
    auto const book = load_book(book_paths(options), diagnostics);
    if (!book) return print_problems(diagnostics, schema, true), invalid_input;
    if (options.has("into")) return write_all(options.get("into"), *book);
    print(json_text(schema_of(kind, *book)));
    return done;
}

}  // namespace asterism::cli
