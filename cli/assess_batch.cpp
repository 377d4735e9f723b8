// SPDX-License-Identifier: MIT
#include "assess_batch.h"

#include <algorithm>
#include <optional>

#include <fmt/format.h>

#include "batch/csv_lines.h"
#include "batch/run.h"
#include "batch_report.h"
#include "book.h"
#include "descriptor.h"
#include "exit_code.h"
#include "files.h"
#include "render/batch_line.h"
#include "render/escape.h"
#include "terminal.h"

namespace asterism::cli {

namespace {

constexpr auto schema = "asterism.assessment/1";

bool is_csv(Options const& options, std::string const& file) {
    auto const input = options.get("input");
    if (!input.empty() && input != "csv" && input != "jsonl")
        throw UsageError(fmt::format("--batch reads jsonl or csv, not `{}`", input));
    return input.empty() ? named_csv(file) : input == "csv";
}

std::string only_file(Options const& options) {
    auto const files = options.all("file");
    if (files.size() != 1) throw UsageError("--batch takes one file, or - for stdin");
    return files.front();
}

void refuse_single_case_options(Options const& options) {
    for (auto const* name : {"finding", "absent", "unsure", "measure", "history", "examined", "sex",
                             "gestation", "age", "born", "case", "why"}) {
        if (options.has(name))
            throw UsageError(fmt::format("--{} is for one case; --batch reads a file", name));
    }
    if (options.has("hpo"))
        throw UsageError(
            "--hpo serves records with HPO terms; --batch reads our own jsonl and csv");
    if (options.get("format", "json") != "json")
        throw UsageError("--batch writes JSON lines; --format may only be json");
    auto const detail = options.get("detail", "brief");
    if (detail != "brief" && detail != "full")
        throw UsageError(fmt::format("unknown detail `{}`; accepted: brief, full", detail));
}

/// The streams of one batch and what is said of them.
class Batch {
public:
    Batch(std::string const& file, std::string rejects)
        : file_(file),
          rejects_name_(std::move(rejects)),
          input_(Descriptor::to_read(file)),
          output_(Descriptor::to_write("-")),
          report_(file) {
        if (input_.is(output_)) throw UsageError("the output is the file that is read");
        if (rejects_name_.empty()) return;
        if (input_.is(rejects_name_) || output_.is(rejects_name_) || rejects_name_ == "-")
            throw UsageError("--rejects takes a file of its own, not the input or the output");
        rejects_.emplace(Descriptor::to_write(rejects_name_));
    }

    /// Empty when the files could be opened.
    std::string cannot_open() const {
        if (!input_.error().empty()) return said(file_, "cannot be read", input_);
        if (rejects_ && !rejects_->error().empty())
            return said(rejects_name_, "cannot be written", *rejects_);
        return {};
    }

    int run(batch::BatchPlan const& plan, bool csv, unsigned jobs) {
        auto const bytes = batch::unpacked(
            [this](char* to, std::size_t size) { return input_.read(to, size, stop_asked()); });
        auto const source = csv ? batch::csv_lines(bytes.read) : batch::json_lines(bytes.read);
        auto outcome = batch::run_batch(*source, plan, jobs, sink(), stop_asked());
        if (outcome.failure.empty()) outcome.failure = bytes.failure();
        if (outcome.failure.empty() && !outcome.stopped) outcome.failure = input_.error();
        return end(outcome);
    }

private:
    static std::string said(std::string const& file, std::string_view what,
                            Descriptor const& descriptor) {
        return fmt::format("{}: error: the file {}: {}\n", terminal_safe(file), what,
                           descriptor.error());
    }

    batch::BatchSink sink() {
        return {
            [this](std::string_view lines) { return output_.write(lines); },
            [this](std::uint64_t line, std::string_view record) {
                if (!rejects_) return report_.refused(line, record), true;
                report_.recorded(record);
                return rejects_->write(fmt::format("{{\"line\":{},{}\n", line, record.substr(1)));
            },
            [this](std::uint64_t cases, std::uint64_t refused) {
                report_.progress(cases, refused);
            }};
    }

    int end(batch::BatchOutcome const& outcome) {
        bool const closed = !rejects_ || rejects_->close();
        report_.finish(outcome.cases, outcome.refused, rejects_name_);
        if (outcome.write_failed || !closed) {
            auto const& where = output_.error().empty() ? rejects_name_ : "standard output";
            auto const& why = output_.error().empty() ? rejects_->error() : output_.error();
            report(fmt::format("asterism: {} cannot be written: {}; the result is incomplete\n",
                               terminal_safe(where), why));
            return internal_error;
        }
        if (outcome.stopped) {
            report("interrupted: the result is incomplete; what was written is whole lines\n");
            return interrupted;
        }
        if (!outcome.failure.empty()) {
            report(fmt::format("{}: error: {}; the result is incomplete\n", terminal_safe(file_),
                               terminal_safe(outcome.failure)));
            return invalid_input;
        }
        return outcome.refused > 0 ? invalid_input : done;
    }

    std::string file_;
    std::string rejects_name_;
    Descriptor input_;
    Descriptor output_;
    std::optional<Descriptor> rejects_;
    BatchReport report_;
};

}  // namespace

void add_batch_options(Options& options) {
    options.flag("batch", "many cases: JSON lines or CSV, gzip or not; one JSON line each")
        .value("jobs", "N", "with --batch: threads (default: all cores); the output is the same")
        .value("rejects", "FILE", "with --batch: where refused lines are listed, with reasons");
}

bool is_batch(Options const& options) {
    if (options.has("batch")) return true;
    for (auto const* name : {"jobs", "rejects"}) {
        if (options.has(name)) throw UsageError(fmt::format("--{} goes with --batch", name));
    }
    return false;
}

int assess_batch(Options const& options) {
    refuse_single_case_options(options);
    auto const file = only_file(options);
    auto const jobs = options.jobs();
    bool const csv = is_csv(options, file);
    Diagnostics diagnostics;
    auto const* const book = load_judging_book(book_paths(options), diagnostics);
    if (!book) return print_problems(diagnostics, schema, false), invalid_input;
    batch::FastBook const fast(*book);
    auto const writer = batch_line_writer(*book->book);
    batch::BatchPlan const plan{fast, *writer, file, options.get("detail") == "full"};
    watch_signals();
    Batch run(file, options.get("rejects"));
    if (auto const problem = run.cannot_open(); !problem.empty())
        return report(problem), invalid_input;
    return run.run(plan, csv, jobs);
}

}  // namespace asterism::cli
