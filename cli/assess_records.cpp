// SPDX-License-Identifier: MIT
#include "assess_records.h"

#include <algorithm>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "answer.h"
#include "assess/assess.h"
#include "book.h"
#include "case_input.h"
#include "exit_code.h"
#include "refusal.h"
#include "render/diagnostics_text.h"
#include "render/escape.h"
#include "render/json.h"
#include "terminal.h"

namespace asterism::cli {

namespace {

using Json = nlohmann::ordered_json;

constexpr auto schema = "asterism.assessment/1";

class Records {
public:
    Records(CompiledRulebook const& book, AssessmentWriter const& writer, TextOptions text,
            HpoUsed hpo, bool many)
        : book_(book), writer_(writer), text_(text), hpo_(std::move(hpo)), many_(many) {}

    void judge(CaseInput const& input) {
        if (input.diagnostics.has_errors()) return refuse(input);
        report(diagnostics_text(input.diagnostics));
        for (auto const& imported : input.cases) answer(imported, *input.reader);
    }

    int status() const { return refused_ ? invalid_input : done; }

private:
    void answer(ImportedCase const& imported, CaseReader const& reader) {
        auto const assessment = answer_for(writer_, text_, book_, imported.baby);
        AnswerView const view{assessment, imported.baby, book_, text_};
        if (writer_.name == "json")
            return print_json(assessment_json(assessment), imported, reader);
        auto const heading = many_ && writer_.name == "text"
                                 ? fmt::format("== {}\n", terminal_safe(assessment.case_id))
                                 : "";
        print(heading + writer_.write(view));
        if (!reader.foreign) return;
        auto const how = import_text(imported, *book_.ontology, reader.name, hpo_);
        if (writer_.name == "text")
            print("\n" + how);
        else
            report(how);
    }

    void print_json(Json document, ImportedCase const& imported, CaseReader const& reader) {
        if (reader.foreign)
            document["import"] = import_json(imported, *book_.ontology, reader.name, hpo_);
        print_document(document);
    }

    /// One of many documents is one line.
    void print_document(Json const& document) {
        print(many_ ? document.dump(-1, ' ', false, Json::error_handler_t::replace) + "\n"
                    : json_text(document));
    }

    /// No verdict for any case of the file, but red flags that were recognised come first.
    void refuse(CaseInput const& input) {
        refused_ = true;
        std::vector<Evidence> flags;
        for (auto const& imported : input.cases) {
            auto const more = recognised_red_flags(book_, imported.baby);
            flags.insert(flags.end(), more.begin(), more.end());
        }
        if (writer_.name == "json") print_document(refusal_json(flags, input.diagnostics));
        if (writer_.name == "text") print(red_flag_text(flags));
        report_refusal(input.diagnostics);
    }

    CompiledRulebook const& book_;
    AssessmentWriter const& writer_;
    TextOptions text_;
    HpoUsed hpo_;
    bool many_;
    bool refused_ = false;
};

}  // namespace

int assess_records(Options const& options, CompiledRulebook const& book,
                   AssessmentWriter const& writer, TextOptions text) {
    auto const files = options.all("file");
    if (files.empty()) throw UsageError("--input names how a file is read, but no file is given");
    if (options.has("why"))
        throw UsageError("--why explains one case; convert the record first (asterism convert)");
    reader_named(options.get("input"));
    Diagnostics diagnostics;
    auto const hpo = options.has("hpo") ? load_hpo(options.get("hpo"), diagnostics) : std::nullopt;
    if (diagnostics.has_errors())
        return print_problems(diagnostics, schema, writer.name == "json"), invalid_input;
    auto const inputs =
        read_case_files(files, options.get("input"), {*book.ontology, hpo ? &*hpo : nullptr});
    std::size_t cases = 0;
    for (auto const& input : inputs) cases += std::max<std::size_t>(input.cases.size(), 1);
    Records records(book, writer, text, hpo_used(hpo, *book.ontology), cases > 1);
    for (auto const& input : inputs) records.judge(input);
    return records.status();
}

}  // namespace asterism::cli
