// SPDX-License-Identifier: MIT
#include "book.h"

#include <utility>

#include <fmt/format.h>
#include <spdlog/spdlog.h>
#include <nlohmann/json.hpp>

#include "compile/norm_descriptions.h"
#include "files.h"
#include "image/built_in.h"
#include "image/image.h"
#include "memory.h"
#include "release_shelf.h"
#include "render/diagnostics_text.h"
#include "render/json.h"
#include "terminal.h"

namespace asterism::cli {

namespace {

std::vector<SourcePtr> sources(std::string const& folder, std::string const& built_in,
                               Diagnostics& diagnostics) {
    return folder.empty() ? embedded_sources(built_in) : read_folder(folder, diagnostics);
}

/// `fenton-2013=FILE`: the file joins the ontology under the name that the norm looks for.
void add_norm_table(std::string const& given, std::vector<SourcePtr>& files,
                    Diagnostics& diagnostics) {
    auto const equals = given.find('=');
    if (equals == std::string::npos || equals == 0 || equals + 1 == given.size()) {
        throw UsageError(fmt::format("expected --norm-table NORM=FILE, found `{}`", given));
    }
    auto const text = read_source(given.substr(equals + 1), diagnostics);
    if (text)
        files.push_back(
            make_source(supplied_table_name(given.substr(0, equals)), std::string(text->text())));
}

template <class T>
std::shared_ptr<T const> shared(std::optional<T> value) {
    return value ? std::make_shared<T const>(std::move(*value)) : nullptr;
}

/// Whether the ontology asked for is the one that the program holds an image of.
bool has_image(BookPaths const& paths) {
    return paths.ontology.empty() && paths.norm_tables.empty() && !image::built_in().empty();
}

/// The program ends with the book: taking it apart piece by piece would be for nothing. Kept where
/// it can be reached, so that it is no leak.
CompiledRulebook const* kept(CompiledRulebook book) {
    static auto& all = *new std::vector<std::unique_ptr<CompiledRulebook const>>;
    return all.emplace_back(std::make_unique<CompiledRulebook const>(std::move(book))).get();
}

/// What reading the image and judging one baby by it takes.
constexpr std::size_t memory_for_image = 512 * 1024;

CompiledRulebook const* image_of_book() {
    expect_to_use(memory_for_image);
    static auto const* const book = kept(image::read(image::built_in(), image::embedded_text));
    spdlog::info("image: {} nodes, {} facts", book->circuit.size(), book->facts.size());
    return book;
}

}  // namespace

BookPaths book_paths(Options const& options) {
    auto rulebook = options.get("rulebook");
    if (auto const folder = options.all(rulebook_folder); !folder.empty()) {
        if (!rulebook.empty()) throw UsageError("give the rulebook's folder once");
        rulebook = folder.front();
    }
    return {std::move(rulebook), options.get("ontology"), options.all("norm-table"),
            options.get("as-of")};
}

std::shared_ptr<Ontology const> load_ontology(BookPaths const& paths, Diagnostics& diagnostics) {
    auto files = sources(paths.ontology, "ontology/", diagnostics);
    for (auto const& given : paths.norm_tables) add_norm_table(given, files, diagnostics);
    spdlog::info("ontology: {} files", files.size());
    return files.empty() ? nullptr : shared(asterism::load_ontology(files, diagnostics));
}

std::shared_ptr<Rulebook const> load_rulebook(BookPaths const& paths, Diagnostics& diagnostics) {
    if (!paths.as_of.empty()) return load_rulebook_of(paths.rulebook, paths.as_of, diagnostics);
    auto const files = sources(paths.rulebook, "rules/newborn/", diagnostics);
    spdlog::info("rulebook: {} files", files.size());
    return files.empty() ? nullptr : shared(asterism::load_rulebook(files, diagnostics));
}

std::optional<CompiledRulebook> compiled(std::shared_ptr<Rulebook const> book,
                                         std::shared_ptr<Ontology const> ontology,
                                         Diagnostics& diagnostics) {
    return book && ontology ? compile(std::move(book), std::move(ontology), diagnostics)
                            : std::nullopt;
}

std::optional<CompiledRulebook> load_book(BookPaths const& paths, Diagnostics& diagnostics) {
    auto ontology = load_ontology(paths, diagnostics);
    auto book = compiled(load_rulebook(paths, diagnostics), std::move(ontology), diagnostics);
    if (book) spdlog::info("circuit: {} nodes, {} facts", book->circuit.size(), book->facts.size());
    return book;
}

CompiledRulebook const* load_judging_book(BookPaths const& paths, Diagnostics& diagnostics) {
    bool const shipped = paths.rulebook.empty() && paths.as_of.empty();
    if (shipped && has_image(paths)) return image_of_book();
    auto book = load_book(paths, diagnostics);
    return book ? kept(*std::move(book)) : nullptr;
}

std::shared_ptr<Ontology const> load_judging_ontology(BookPaths const& paths,
                                                      Diagnostics& diagnostics) {
    return has_image(paths) ? image_of_book()->ontology : load_ontology(paths, diagnostics);
}

OntologyWithNorms load_norms(BookPaths const& paths, Diagnostics& diagnostics) {
    if (has_image(paths)) {
        auto const* const book = image_of_book();
        return {book->ontology, book->standards};
    }
    auto ontology = load_ontology(paths, diagnostics);
    auto standards = ontology ? read_standards(*ontology, diagnostics) : nullptr;
    return {std::move(ontology), std::move(standards)};
}

void print_problems(Diagnostics const& diagnostics, std::string const& schema, bool json) {
    report(diagnostics_text(diagnostics));
    if (!json) return;
    nlohmann::ordered_json envelope{{"schema", schema},
                                    {"diagnostics", diagnostics_json(diagnostics)}};
    print(json_text(envelope));
}

}  // namespace asterism::cli
