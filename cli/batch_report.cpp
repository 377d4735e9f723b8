// SPDX-License-Identifier: MIT
#include "batch_report.h"

#include <fmt/format.h>
#include <unistd.h>
#include <nlohmann/json.hpp>

#include "base/number.h"
#include "render/escape.h"
#include "terminal.h"

namespace asterism::cli {

namespace {

constexpr std::uint64_t most_printed = 20;
constexpr auto between_lines = std::chrono::seconds(1);
constexpr auto between_lines_of_a_log = std::chrono::seconds(10);

bool names_red_flag(std::string_view record) {
    return record.find("\"recognised_red_flags\":[") != std::string_view::npos;
}

std::string counted(std::uint64_t number, std::string_view what) {
    return fmt::format("{} {}{}", grouped(number), what, number == 1 ? "" : "s");
}

std::string in_words(nlohmann::json const& problem) {
    auto text =
        fmt::format("error: {} [{}]", problem.value("message", ""), problem.value("code", ""));
    if (auto const help = problem.value("help", ""); !help.empty()) text += "; " + help;
    return terminal_safe(text);
}

}  // namespace

BatchReport::BatchReport(std::string const& file)
    : file_(terminal_safe(file == "-" ? "<stdin>" : file)), terminal_(isatty(STDERR_FILENO) == 1) {}

double BatchReport::seconds() const {
    return std::chrono::duration<double>(Clock::now() - start_).count();
}

void BatchReport::progress(std::uint64_t cases, std::uint64_t refused) {
    auto const now = Clock::now();
    auto const wait = terminal_ || last_ == start_ ? Clock::duration(between_lines)
                                                   : Clock::duration(between_lines_of_a_log);
    if (now - last_ < wait) return;
    last_ = now;
    report(fmt::format("{}{} cases, {} refused, {:.0f} s{}", terminal_ ? "\r" : "", grouped(cases),
                       grouped(refused), seconds(), terminal_ ? "" : "\n"));
    on_progress_line_ = terminal_;
}

void BatchReport::end_progress_line() {
    if (on_progress_line_) report("\n");
    on_progress_line_ = false;
}

void BatchReport::recorded(std::string_view record) {
    if (names_red_flag(record)) ++with_red_flags_;
}

void BatchReport::refused(std::uint64_t line, std::string_view record) {
    recorded(record);
    if (++printed_ > most_printed) return;
    end_progress_line();
    auto const read = nlohmann::json::parse(record);
    for (auto const& problem : read["problems"])
        report(fmt::format("{}:{}:{}: {}\n", file_, line, problem.value("column", 1),
                           in_words(problem)));
    for (auto const& flag : read.value("recognised_red_flags", nlohmann::json::array()))
        report(fmt::format("{}:{}: recognised despite the errors, act on it: red flag: {}\n", file_,
                           line, terminal_safe(flag.value("label", ""))));
}

void BatchReport::finish(std::uint64_t cases, std::uint64_t refused,
                         std::string const& rejects_file) {
    end_progress_line();
    bool const worked_long = Clock::now() - start_ > between_lines;
    if (refused == 0 && !worked_long) return;
    report(fmt::format("{} judged, {} refused, {:.1f} s\n", counted(cases, "case"),
                       counted(refused, "line"), seconds()));
    if (refused == 0) return;
    if (with_red_flags_ > 0)
        report(fmt::format("{} of the refused lines name a red flag: look at them first\n",
                           grouped(with_red_flags_)));
    if (!rejects_file.empty()) {
        report(fmt::format("the refused lines are listed in {}\n", terminal_safe(rejects_file)));
    } else if (printed_ > most_printed) {
        report("give --rejects FILE for the whole list\n");
    }
}

}  // namespace asterism::cli
