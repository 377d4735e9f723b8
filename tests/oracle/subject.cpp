// SPDX-License-Identifier: MIT
#include "oracle/subject.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>

#include <fmt/format.h>

#include "assess/assess.h"
#include "oracle/engine.h"

namespace asterism::oracle {

namespace {

std::vector<SourcePtr> files_below(std::string const& folder) {
    std::vector<std::string> paths;
    for (auto const& entry : std::filesystem::recursive_directory_iterator(folder)) {
        auto const type = entry.path().extension();
        if (type == ".yaml" || type == ".csv") paths.push_back(entry.path().string());
    }
    std::sort(paths.begin(), paths.end());
    std::vector<SourcePtr> files;
    for (auto const& path : paths) {
        std::ifstream stream(path, std::ios::binary);
        files.push_back(make_source(path, {std::istreambuf_iterator<char>(stream), {}}));
    }
    return files;
}

template <class T>
std::shared_ptr<T const> accepted(std::optional<T> value, Diagnostics const& diagnostics) {
    if (!value) throw std::runtime_error(problems(diagnostics));
    return std::make_shared<T const>(std::move(*value));
}

std::shared_ptr<Ontology const> load_ontology_files(std::vector<SourcePtr> const& files) {
    Diagnostics diagnostics;
    auto ontology = load_ontology(files, diagnostics);
    return accepted(std::move(ontology), diagnostics);
}

std::shared_ptr<Rulebook const> load_book_files(std::vector<SourcePtr> const& files) {
    Diagnostics diagnostics;
    auto book = load_rulebook(files, diagnostics);
    return accepted(std::move(book), diagnostics);
}

/// Answers list tallies without their names: both readers must have them in the same order.
void require_same_tallies(CompiledRulebook const& compiled, Rulebook const& book) {
    auto const same = [](CompiledTally const& tally, std::string const& name) {
        return tally.id == name;
    };
    auto const names = tally_names(book);
    if (!std::equal(compiled.tallies.begin(), compiled.tallies.end(), names.begin(), names.end(),
                    same))
        throw std::logic_error("the engine's tallies are not those of the book");
}

}  // namespace

std::vector<std::string> Subject::finding_names() const {
    std::vector<std::string> names;
    for (auto const& finding : ontology->findings) names.push_back(finding.id.text);
    return names;
}

std::string problems(Diagnostics const& diagnostics) {
    std::string text;
    for (auto const& diagnostic : diagnostics.sorted()) {
        text += fmt::format("{}: {} [{}]\n", diagnostic.span.place(), diagnostic.message,
                            diagnostic.code);
    }
    return text;
}

std::shared_ptr<Ontology const> ontology_from(std::string_view text) {
    return load_ontology_files({make_source("ontology.yaml", std::string(text))});
}

std::shared_ptr<Rulebook const> book_from(std::string_view text) {
    return load_book_files({make_source("book.yaml", std::string(text))});
}

std::unique_ptr<Subject> subject(std::shared_ptr<Rulebook const> book,
                                 std::shared_ptr<Ontology const> ontology,
                                 Diagnostics& diagnostics) {
    auto compiled = compile(book, ontology, diagnostics);
    if (!compiled) return nullptr;
    require_same_tallies(*compiled, *book);
    auto oracle = std::make_unique<Oracle const>(*book, *ontology);
    return std::make_unique<Subject>(std::move(ontology), std::move(book), std::move(*compiled),
                                     std::move(oracle));
}

std::unique_ptr<Subject> subject(std::string_view book, std::shared_ptr<Ontology const> ontology) {
    Diagnostics diagnostics;
    auto result = subject(book_from(book), std::move(ontology), diagnostics);
    if (!result) throw std::runtime_error(problems(diagnostics));
    return result;
}

Subject const& shipped_book() {
    static auto const shipped = [] {
        auto ontology = load_ontology_files(files_below("ontology"));
        Diagnostics diagnostics;
        auto result = subject(load_book_files(files_below("rules/newborn")), ontology, diagnostics);
        if (!result) throw std::runtime_error(problems(diagnostics));
        return result;
    }();
    return *shipped;
}

std::vector<std::string> disagreements(Subject const& subject, Case const& baby) {
    auto const engine = ask_engine(subject.compiled, baby);
    auto const oracle = subject.oracle->answer(baby, engine.numbers);
    if (oracle == engine.answer) return {};
    return differences(oracle, engine.answer, *subject.book, subject.finding_names());
}

std::vector<std::string> disagreements_in_print(Subject const& subject, Case const& baby) {
    auto lines = disagreements(subject, baby);
    if (!lines.empty()) return lines;
    auto const answer = ask_engine(subject.compiled, baby).answer;
    return differences_in_print(answer, assess(subject.compiled, baby), *subject.book);
}

}  // namespace asterism::oracle
