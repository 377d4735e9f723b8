// SPDX-License-Identifier: MIT
#include "shipped_book.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <memory>

#include <fmt/format.h>

#include "cases/read_case.h"
#include "testing.h"

namespace asterism::testing {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t problems_shown = 5;

bool belongs_to_book(fs::path const& path) {
    bool const text = path.extension() == ".yaml" || path.extension() == ".csv";
    return text && path.generic_string().find("/releases/") == std::string::npos;
}

std::string problems(Diagnostics const& diagnostics) {
    std::string text;
    std::size_t shown = 0;
    for (auto const& diagnostic : diagnostics.sorted()) {
        if (diagnostic.severity != Severity::error || ++shown > problems_shown) continue;
        text += fmt::format("\n{}: {} [{}]", diagnostic.span.place(), diagnostic.message,
                            diagnostic.code);
    }
    return text;
}

CompiledRulebook load() {
    Diagnostics diagnostics;
    auto ontology = load_ontology(files_below("ontology"), diagnostics);
    auto book = load_rulebook(files_below("rules/newborn"), diagnostics);
    REQUIRE_MESSAGE((ontology && book), "the book cannot be read:", problems(diagnostics));
    auto compiled = compile(std::make_shared<Rulebook const>(std::move(*book)),
                            std::make_shared<Ontology const>(std::move(*ontology)), diagnostics);
    REQUIRE_MESSAGE(compiled, "the book does not compile:", problems(diagnostics));
    return std::move(*compiled);
}

}  // namespace

std::vector<SourcePtr> files_below(std::string const& folder) {
    REQUIRE_MESSAGE(fs::is_directory(folder), "no folder ", folder, " in ",
                    fs::current_path().string());
    std::vector<std::string> paths;
    for (auto const& entry : fs::recursive_directory_iterator(folder)) {
        if (belongs_to_book(entry.path())) paths.push_back(entry.path().generic_string());
    }
    std::sort(paths.begin(), paths.end());
    std::vector<SourcePtr> files;
    for (auto const& path : paths) {
        std::ifstream stream(path, std::ios::binary);
        files.push_back(make_source(path, {std::istreambuf_iterator<char>(stream), {}}));
    }
    return files;
}

CompiledRulebook const& shipped_book() {
    static CompiledRulebook const book = load();
    return book;
}

Case case_from(std::string text) {
    Diagnostics diagnostics;
    auto baby =
        read_case(make_source("case", std::move(text)), *shipped_book().ontology, diagnostics);
    REQUIRE_MESSAGE(!diagnostics.has_errors(), "the case has errors:", problems(diagnostics));
    return baby;
}

FindingId finding(std::string_view id) {
    auto const found = shipped_book().ontology->finding(id);
    REQUIRE_MESSAGE(found, "the ontology has no finding ", std::string(id));
    return *found;
}

std::string class_text(FindingId id) {
    auto const value = shipped_book().class_of(id);
    return value ? std::string(to_text(*value)) : "none";
}

}  // namespace asterism::testing
