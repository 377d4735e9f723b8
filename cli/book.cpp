// SPDX-License-Identifier: MIT
#include "book.h"

#include <nlohmann/json.hpp>
#include <spdlog/spdlog.h>

#include "files.h"
#include "render/diagnostics_text.h"
#include "render/json.h"
#include "terminal.h"

namespace asterism::cli {

namespace {

std::vector<SourcePtr> sources(std::string const& folder, std::string const& built_in, Diagnostics& diagnostics) {
    return folder.empty() ? embedded_sources(built_in) : read_folder(folder, diagnostics);
}

template <class T>
std::shared_ptr<T const> shared(std::optional<T> value) {
    return value ? std::make_shared<T const>(std::move(*value)) : nullptr;
}

}  // namespace

BookPaths book_paths(Options const& options) { return {options.get("rulebook"), options.get("ontology")}; }

std::shared_ptr<Ontology const> load_ontology(BookPaths const& paths, Diagnostics& diagnostics) {
    auto const files = sources(paths.ontology, "ontology/", diagnostics);
    spdlog::info("ontology: {} files", files.size());
    return files.empty() ? nullptr : shared(asterism::load_ontology(files, diagnostics));
}

std::shared_ptr<Rulebook const> load_rulebook(BookPaths const& paths, Diagnostics& diagnostics) {
    auto const files = sources(paths.rulebook, "rules/newborn/", diagnostics);
    spdlog::info("rulebook: {} files", files.size());
    return files.empty() ? nullptr : shared(asterism::load_rulebook(files, diagnostics));
}

std::optional<CompiledRulebook> load_book(BookPaths const& paths, Diagnostics& diagnostics) {
    auto ontology = load_ontology(paths, diagnostics);
    auto book = load_rulebook(paths, diagnostics);
    if (!ontology || !book) return std::nullopt;
    auto compiled = compile(std::move(book), std::move(ontology), diagnostics);
    if (compiled) spdlog::info("circuit: {} nodes, {} facts", compiled->circuit.size(), compiled->facts.size());
    return compiled;
}

void print_problems(Diagnostics const& diagnostics, std::string const& schema, bool json) {
    report(diagnostics_text(diagnostics));
    if (!json) return;
    nlohmann::ordered_json envelope{{"schema", schema}, {"diagnostics", diagnostics_json(diagnostics)}};
    print(json_text(envelope));
}

}  // namespace asterism::cli
