// SPDX-License-Identifier: MIT
#include "format_book.h"

#include <doctest/doctest.h>

#include <fstream>
#include <memory>
#include <sstream>

#include <nlohmann/json.hpp>

#include "assess/assess.h"
#include "assess/changes.h"
#include "cases/read_case.h"
#include "embedded/embedded.h"
#include "render/assessment_html.h"
#include "render/assessment_markdown.h"
#include "render/assessment_text.h"
#include "render/consult.h"
#include "render/diagnostics_text.h"
#include "render/json.h"

namespace asterism::testing {

namespace {

std::vector<SourcePtr> built_in(std::string_view prefix) {
    std::vector<SourcePtr> sources;
    for (auto const& file : embedded::files()) {
        bool const wanted = file.name.starts_with(prefix);
        if (wanted) sources.push_back(make_source(std::string(file.name), std::string(file.text)));
    }
    return sources;
}

CompiledRulebook loaded(std::vector<SourcePtr> const& ontology_files,
                        std::vector<SourcePtr> const& book_files) {
    Diagnostics diagnostics;
    auto ontology = load_ontology(ontology_files, diagnostics);
    auto book = load_rulebook(book_files, diagnostics);
    std::optional<CompiledRulebook> compiled;
    if (ontology && book) {
        compiled = compile(std::make_shared<Rulebook const>(std::move(*book)),
                           std::make_shared<Ontology const>(std::move(*ontology)), diagnostics);
    }
    INFO(diagnostics_text(diagnostics));
    REQUIRE(compiled);
    return std::move(*compiled);
}

std::vector<SourcePtr> one_file(std::string const& path) {
    return {make_source(path, file_text(path))};
}

}  // namespace

std::string file_text(std::string const& path) {
    std::ifstream stream(path, std::ios::binary);
    std::ostringstream text;
    text << stream.rdbuf();
    return text.str();
}

CompiledRulebook const& format_book() {
    static CompiledRulebook const book = loaded(one_file("tests/formats/book/ontology.yaml"),
                                                one_file("tests/formats/book/rules.yaml"));
    return book;
}

CompiledRulebook const& shipped_book() {
    static CompiledRulebook const book = loaded(built_in("ontology/"), built_in("rules/newborn/"));
    return book;
}

Judged judged(CompiledRulebook const& book, std::string const& case_text) {
    Diagnostics diagnostics;
    Judged result;
    result.baby = read_case(make_source("case.yaml", case_text), *book.ontology, diagnostics);
    INFO(diagnostics_text(diagnostics));
    REQUIRE_FALSE(diagnostics.has_errors());
    result.assessment = assess(book, result.baby);
    add_what_would_change(book, result.baby, result.assessment);
    result.context = context_of(result.baby, *book.ontology);
    return result;
}

Judged golden_case(std::string const& name) {
    auto result = judged(format_book(), file_text("tests/formats/book/" + name + ".yaml"));
    result.assessment.engine = "0.0.0-test";
    return result;
}

std::vector<Writer> const& writers() {
    static std::vector<Writer> const all{
        {"brief.txt", [](Judged const& j) { return assessment_text(j.assessment); }},
        {"full.txt",
         [](Judged const& j) {
             return assessment_text(j.assessment, {false, Detail::full});
         }},
        {"consult.txt", [](Judged const& j) { return consult_note(j.assessment, j.context); }},
        {"md", [](Judged const& j) { return assessment_markdown(j.assessment, j.context); }},
        {"html", [](Judged const& j) { return assessment_html(j.assessment, j.context); }},
        {"json", [](Judged const& j) { return json_text(assessment_json(j.assessment)); }},
    };
    return all;
}

std::string written(std::string const& name, Judged const& judged) {
    for (auto const& writer : writers()) {
        if (writer.name == name) return writer.write(judged);
    }
    FAIL("no writer ", name);
    return {};
}

std::vector<std::string> lines_of(std::string const& text) {
    std::vector<std::string> lines;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);) lines.push_back(line);
    return lines;
}

}  // namespace asterism::testing
