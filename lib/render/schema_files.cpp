// SPDX-License-Identifier: MIT
#include "render/schema_files.h"

#include <nlohmann/json.hpp>

#include "cases/case_syntax.h"
#include "compile/norm_sections.h"
#include "conditions/read.h"
#include "ontology/sections.h"
#include "render/schema.h"
#include "review/vignette.h"
#include "rulebook/release.h"
#include "rulebook/sections.h"

namespace asterism {

namespace {

yaml::Shape rulebook() { return rulebook_file_table().shape(); }
yaml::Shape ontology() { return ontology_file_table().shape(); }
yaml::Shape one_case() { return case_table().shape(); }
yaml::Shape releases() { return release_list_table().shape(); }

/// Files below vignettes/ hold nothing else.
yaml::Shape vignettes() {
    auto shape = rulebook();
    std::erase_if(shape.fields, [](auto const& field) { return field.name != "vignettes"; });
    return shape;
}

yaml::Shape condition() {
    std::vector<yaml::Shape> kinds;
    for (auto const& kind : condition_kinds()) kinds.push_back(kind.shape());
    return yaml::either_shape(std::move(kinds));
}

template <class Things>
std::vector<std::string> ids(Things const& things) {
    std::vector<std::string> result;
    for (auto const& thing : things) result.push_back(thing.id.text);
    return result;
}

std::vector<std::string> ids_of_tallies(CompiledRulebook const& book) {
    std::vector<std::string> result;
    for (auto const& tally : book.tallies) result.push_back(tally.id);
    return result;
}

SchemaNames names(CompiledRulebook const& book) {
    auto const& ontology = *book.ontology;
    SchemaNames names;
    names.forms = {{"condition", condition()},
                   {"case", one_case()},
                   {"expectation", expectation_shape()},
                   {"norm", norm_table().shape()}};
    names.offered = {{"finding", ids(ontology.findings)},
                     {"step", ids(ontology.steps)},
                     {"region", ids(ontology.regions)},
                     {"measure", ids(ontology.measures)},
                     {"source", ids(ontology.citations)},
                     {"service", ids(book.book->services)},
                     {"key", ids(book.book->keys)},
                     {"tally", ids_of_tallies(book)},
                     {"constellation", ids(book.book->constellations)},
                     {"action", ids(book.book->actions)},
                     {"rule", ids(book.book->rules)}};
    auto& steps = names.offered["step"];
    for (auto const* word : {"all", "none"}) steps.emplace_back(word);
    for (auto const& region : ontology.regions) steps.push_back(region.id.text);
    return names;
}

}  // namespace

std::vector<SchemaFile> const& schema_files() {
    static std::vector<SchemaFile> const files{
        {"rulebook", "a file of a rulebook", rulebook},
        {"vignettes", "a file of vignettes", vignettes},
        {"releases", "the list of released versions", releases},
        {"ontology", "a file of an ontology", ontology},
        {"case", "a case: one baby's examination", one_case},
    };
    return files;
}

nlohmann::ordered_json schema_of(SchemaFile const& file, CompiledRulebook const& book) {
    return schema_json(file.title, file.shape(), names(book));
}

}  // namespace asterism
