// SPDX-License-Identifier: MIT
// What is said from the image is what is said from the YAML, byte for byte.
#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "assess/changes.h"
#include "assess/measure_report.h"
#include "books.h"
#include "cases/from_arguments.h"
#include "render/assessment_writers.h"
#include "render/lookup.h"
#include "render/measure_report.h"
#include "render/worksheet.h"
#include "review/vignette.h"
#include "support/real_book.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

std::vector<SourcePtr> with_vignettes() {
    auto files = project_files("rules/newborn");
    std::vector<std::string> names;
    for (auto const& entry :
         std::filesystem::recursive_directory_iterator("rules/newborn/vignettes"))
        if (entry.is_regular_file()) names.push_back(entry.path().generic_string());
    std::sort(names.begin(), names.end());
    for (auto const& name : names) {
        std::ifstream stream(name, std::ios::binary);
        files.push_back(make_source(name, std::string(std::istreambuf_iterator<char>(stream), {})));
    }
    return files;
}

std::vector<Vignette> const& vignettes() {
    static std::vector<Vignette> const all = [] {
        Diagnostics diagnostics;
        auto book = load_rulebook(with_vignettes(), diagnostics);
        REQUIRE(book);
        auto compiled = real_book();
        compiled.book = std::make_shared<Rulebook const>(*std::move(book));
        return read_vignettes(compiled, diagnostics);
    }();
    return all;
}

std::string answer(CompiledRulebook const& book, Case const& baby, std::string_view format) {
    auto assessment = assess(book, baby);
    add_what_would_change(book, baby, assessment);
    return assessment_writer(format)->write({assessment, baby, book, {}});
}

std::string measured(CompiledRulebook const& book, CaseArguments const& arguments) {
    Diagnostics diagnostics;
    auto const baby = read_case(case_from_arguments(arguments), *book.ontology, diagnostics);
    std::string text;
    for (auto const& problem : diagnostics.sorted()) text += problem.message + "\n";
    return text +
           measure_report_json(measure_reports(*book.ontology, *book.standards, baby, "")).dump();
}

}  // namespace

TEST_CASE("every vignette has the same answer in JSON") {
    if (no_image()) return;
    REQUIRE(vignettes().size() > 1000);
    for (auto const& vignette : vignettes()) {
        CAPTURE(vignette.id.text);
        CHECK(answer(imaged_book(), vignette.baby, "json") ==
              answer(real_book(), vignette.baby, "json"));
    }
}

TEST_CASE("vignettes have the same answer in every other format") {
    if (no_image()) return;
    for (auto const& writer : assessment_writers()) {
        for (std::size_t i = 0; i < vignettes().size(); i += 97) {
            auto const& baby = vignettes()[i].baby;
            CAPTURE(vignettes()[i].id.text);
            CAPTURE(std::string(writer.name));
            CHECK(answer(imaged_book(), baby, writer.name) ==
                  answer(real_book(), baby, writer.name));
        }
    }
}

TEST_CASE("every finding is looked up the same") {
    if (no_image()) return;
    for (auto const& finding : real_book().ontology->findings) {
        for (auto const& name : {finding.id.text, finding.label}) {
            CAPTURE(name);
            CHECK(lookup_text(look_up(imaged_book(), name)) ==
                  lookup_text(look_up(real_book(), name)));
            CHECK(lookup_json(name, look_up(imaged_book(), name)) ==
                  lookup_json(name, look_up(real_book(), name)));
        }
    }
}

TEST_CASE("worksheets are the same") {
    if (no_image()) return;
    CHECK(worksheet_yaml(*imaged_book().ontology, true) ==
          worksheet_yaml(*real_book().ontology, true));
    CHECK(worksheet_html(*imaged_book().ontology) == worksheet_html(*real_book().ontology));
}

TEST_CASE("measures read the same by every norm") {
    if (no_image()) return;
    for (auto const* sex : {"female", "male", "undetermined"}) {
        for (auto const* gestation : {"24w0d", "32w6d", "33w0d", "38w4d", "42w6d", "37w"}) {
            for (auto const* age : {"", "14d"}) {
                CaseArguments arguments;
                arguments.measures = {"weight=2.6 kg", "length=47 cm", "head-circumference=31 cm"};
                arguments.sex = sex;
                arguments.gestation = gestation;
                arguments.age = age;
                CAPTURE(fmt::format("{} {} {}", sex, gestation, age));
                CHECK(measured(imaged_book(), arguments) == measured(real_book(), arguments));
            }
        }
    }
}
