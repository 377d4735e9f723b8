// SPDX-License-Identifier: MIT
#include <algorithm>

#include <fmt/format.h>

#include "embedded/embedded.h"
#include "image/image.h"

namespace asterism::image {

namespace {

/// The files of a folder that is carried in the program; without vignettes, which stand in no
/// image, and without earlier versions.
std::vector<SourcePtr> files_below(std::string_view folder) {
    std::vector<SourcePtr> result;
    for (auto const& file : embedded::files()) {
        if (!file.name.starts_with(folder) || file.name.ends_with(".md")) continue;
        auto const below = file.name.substr(folder.size());
        bool const left_out = below.starts_with("vignettes/") || below.starts_with("releases/");
        if (!left_out) result.push_back(Source::over(std::string(file.name), file.text));
    }
    return result;
}

[[noreturn]] void refuse(Diagnostics const& diagnostics) {
    std::string text = "the shipped book has errors";
    for (auto const& problem : diagnostics.sorted())
        text += fmt::format("\n{}: {}", problem.span.place(), problem.message);
    throw BadImage(text);
}

}  // namespace

CompiledRulebook compile_embedded() {
    Diagnostics diagnostics;
    auto ontology = load_ontology(files_below("ontology/"), diagnostics);
    auto rulebook = load_rulebook(files_below("rules/newborn/"), diagnostics);
    if (!ontology || !rulebook) refuse(diagnostics);
    auto book = compile(std::make_shared<Rulebook const>(*std::move(rulebook)),
                        std::make_shared<Ontology const>(*std::move(ontology)), diagnostics);
    if (!book) refuse(diagnostics);
    return *std::move(book);
}

std::string_view embedded_text(std::string const& name) {
    auto const files = embedded::files();
    auto const found = std::ranges::lower_bound(files, name, {}, &embedded::File::name);
    if (found == files.end() || found->name != name)
        throw BadImage(fmt::format("the image names `{}`, which the program does not carry", name));
    return found->text;
}

}  // namespace asterism::image
