// SPDX-License-Identifier: MIT
#pragma once

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <memory>
#include <string>
#include <vector>

#include "assess/assess.h"
#include "cases/read_case.h"
#include "compile/compiled.h"
#include "testing.h"

namespace asterism::testing {

/// The text files below a folder of the project, sorted by name; tests run in
/// the project's folder.
inline std::vector<SourcePtr> project_files(std::string const& folder) {
    std::vector<std::string> names;
    for (auto const& entry : std::filesystem::recursive_directory_iterator(folder)) {
        auto const name = entry.path().generic_string();
        bool const vignette = name.find("/vignettes/") != std::string::npos;
        if ((name.ends_with(".yaml") || name.ends_with(".csv")) && !vignette) names.push_back(name);
    }
    std::sort(names.begin(), names.end());
    std::vector<SourcePtr> files;
    for (auto const& name : names) {
        std::ifstream stream(name, std::ios::binary);
        files.push_back(make_source(name, std::string(std::istreambuf_iterator<char>(stream), {})));
    }
    return files;
}

/// The ontology and the newborn rulebook as they stand in the project, without
/// the vignettes. Loaded once a program; the test stops when they do not load.
inline CompiledRulebook const& real_book() {
    static CompiledRulebook const loaded = [] {
        Diagnostics diagnostics;
        auto ontology = load_ontology(project_files("ontology"), diagnostics);
        auto book = load_rulebook(project_files("rules/newborn"), diagnostics);
        for (auto const& diagnostic : diagnostics.sorted())
            MESSAGE(diagnostic.span.place(), ": ", diagnostic.message);
        REQUIRE(ontology);
        REQUIRE(book);
        auto compiled =
            compile(std::make_shared<Rulebook const>(std::move(*book)),
                    std::make_shared<Ontology const>(std::move(*ontology)), diagnostics);
        for (auto const& diagnostic : diagnostics.sorted())
            MESSAGE(diagnostic.span.place(), ": ", diagnostic.message);
        REQUIRE(compiled);
        return std::move(*compiled);
    }();
    return loaded;
}

/// Reads a case for the real book; it must be in order.
inline Case real_baby(std::string const& text) {
    Diagnostics diagnostics;
    auto baby = read_case(make_source("case.yaml", text), *real_book().ontology, diagnostics);
    CAPTURE(text);
    for (auto const& diagnostic : diagnostics.sorted())
        MESSAGE(diagnostic.span.place(), ": ", diagnostic.message);
    REQUIRE_FALSE(diagnostics.has_errors());
    return baby;
}

inline Assessment real_answer(std::string const& text) {
    return assess(real_book(), real_baby(text));
}

}  // namespace asterism::testing
