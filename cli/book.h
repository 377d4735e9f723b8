// SPDX-License-Identifier: MIT
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "compile/compiled.h"
#include "options.h"

namespace asterism::cli {

/// Folders of a rulebook and an ontology; an empty one means the built-in.
struct BookPaths {
    std::string rulebook;
    std::string ontology;
    std::vector<std::string> norm_tables;  ///< NORM=FILE: tables of norms that are not bundled
    std::string as_of;                     ///< the day whose book is wanted; empty for the newest
};

/// The positional argument of verbs that take a rulebook's folder, instead of --rulebook.
inline constexpr auto rulebook_folder = "rulebook-folder";

/// What --rulebook or its folder, --ontology, --norm-table and --as-of say.
BookPaths book_paths(Options const& options);

std::shared_ptr<Ontology const> load_ontology(BookPaths const& paths, Diagnostics& diagnostics);
std::shared_ptr<Rulebook const> load_rulebook(BookPaths const& paths, Diagnostics& diagnostics);

/// A book compiled; nothing where either was not loaded, or after an error.
std::optional<CompiledRulebook> compiled(std::shared_ptr<Rulebook const> book,
                                         std::shared_ptr<Ontology const> ontology,
                                         Diagnostics& diagnostics);

/// Both, compiled; nothing after an error.
std::optional<CompiledRulebook> load_book(BookPaths const& paths, Diagnostics& diagnostics);

/// The same for verbs that judge babies and need no vignettes, no promises and no condition as
/// written: the shipped book comes from its image, without reading YAML (`image::write`). Null
/// after an error; kept for the life of the program.
CompiledRulebook const* load_judging_book(BookPaths const& paths, Diagnostics& diagnostics);
/// The ontology alone, likewise.
std::shared_ptr<Ontology const> load_judging_ontology(BookPaths const& paths,
                                                      Diagnostics& diagnostics);

/// The ontology with its norms, likewise; the norms are null after an error.
struct OntologyWithNorms {
    std::shared_ptr<Ontology const> ontology;
    std::shared_ptr<norms::Standards const> standards;
};
OntologyWithNorms load_norms(BookPaths const& paths, Diagnostics& diagnostics);

/// Prints the problems to stderr and, when JSON was asked for, as an envelope on stdout.
void print_problems(Diagnostics const& diagnostics, std::string const& schema, bool json);

}  // namespace asterism::cli
