// SPDX-License-Identifier: MIT
#include <algorithm>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "base/nearest.h"
#include "book.h"
#include "cases/csv_record.h"
#include "common.h"
#include "descriptor.h"
#include "exit_code.h"
#include "files.h"
#include "release_shelf.h"
#include "render/audit_report.h"
#include "render/diagnostics_text.h"
#include "render/escape.h"
#include "render/json.h"
#include "terminal.h"
#include "verb.h"

namespace asterism::cli {

namespace {

constexpr std::size_t most_listed = 1'000'000, most_suppressed = 1000;

Options make_options() {
    Options options(
        "audit",
        "  asterism audit babies.jsonl --decisions decisions.csv    a year, by the book of each "
        "exam day\n"
        "  asterism audit babies.csv --by month --by unit           decisions inside the cases\n"
        "  asterism audit babies.csv --decisions d.csv --format html --suppress-below 5 > "
        "report.html\n"
        "Cases are JSON lines or CSV as for `assess --batch`, with `examined-on` and, if wanted,\n"
        "`unit`, `examiner` and what --by names. In CSV a row is a baby (lists under `findings`,\n"
        "`absent`, `unsure`) or a finding (`finding`, `state`, `side`, `grade`, `familial`); what\n"
        "is said of the baby then stands on one of its rows, or is the same on several. Decisions\n"
        "are CSV or JSON lines with `case`, `service`, `referred` (yes or no) and `at`; the "
        "service\n"
        "`none` says: to no service.\n");
    options.value("decisions", "FILE", "who was referred where; default: `decisions` in the cases")
        .value("unlisted", "MEANING",
               "what it means that a service is not named for a baby: unknown (default) or "
               "not-referred")
        .list("by", "COLUMN", "also by month, unit, examiner or any column; may be repeated")
        .list("ignore", "COLUMN", "pass over a column of the cases")
        .value("list", "N", "missed and not indicated referrals listed of each; default 20")
        .value("suppress-below", "N", "hide counts below N, and what would give them away")
        .value("as-of", "DATE", "judge all by the book in force that day, not on the exam day")
        .value("input", "FORMAT", "of the cases: jsonl or csv; default: by the name")
        .value("jobs", "N", "threads (default: all cores); the output is the same")
        .value("format", "FORMAT", "text, json, csv or html")
        .positional("cases", false, "the file of cases, gzip or not; - for stdin")
        .common();
    return options;
}

bool one_of(Options const& options, std::string const& name, std::string const& first,
            std::string const& second, bool fallback) {
    if (!options.has(name)) return fallback;
    auto const text = options.get(name);
    if (text != first && text != second)
        throw UsageError(
            fmt::format("--{}: expected {} or {}, found `{}`", name, first, second, text));
    return text == first;
}

audit::CaseColumns columns_of(Options const& options) {
    audit::CaseColumns columns{{"unit", "examiner"}, options.all("ignore")};
    for (auto const& by : options.all("by")) {
        if (by != "month" && !columns.has(by)) columns.named.push_back(by);
    }
    auto const& own = csv_columns();
    for (auto const& name : columns.named) {
        if (std::find(own.begin(), own.end(), name) != own.end())
            throw UsageError(fmt::format("--by {}: a column of the examination is no group", name));
    }
    return columns;
}

/// A file, or standard input, unpacked when it is gzip.
class Input {
public:
    explicit Input(std::string name) : name_(std::move(name)), file_(Descriptor::to_read(name_)) {}

    batch::ReadBytes bytes() {
        unpacked_ = batch::unpacked(
            [this](char* to, std::size_t size) { return file_.read(to, size, stop_asked()); });
        return unpacked_.read;
    }

    /// Why it could not be read, after the fact.
    std::string failure() const {
        if (!file_.error().empty()) return file_.error();
        return unpacked_.failure ? unpacked_.failure() : std::string();
    }

    std::string whole() {
        std::string text;
        auto const read = bytes();
        constexpr std::size_t piece = 1u << 20;
        for (std::size_t size = 0;;) {
            text.resize(size + piece);
            auto const got = read(text.data() + size, piece);
            if (!got || *got == 0) return text.resize(size), text;
            size += *got;
        }
    }

private:
    std::string name_;
    Descriptor file_;
    batch::Unpacked unpacked_;
};

bool readable(Input const& input, std::string const& name, Diagnostics& diagnostics) {
    auto const why = input.failure();
    if (why.empty()) return true;
    diagnostics.error("unreadable-file", {make_source(name, ""), 0, 0},
                      fmt::format("the file cannot be read: {}", why));
    return false;
}

std::optional<audit::Books> open_books(Options const& options, Diagnostics& diagnostics) {
    auto const paths = book_paths(options);
    auto const ontology = load_ontology(paths, diagnostics);
    auto const shelf = open_shelf(paths.rulebook, diagnostics);
    if (!ontology || !shelf) return std::nullopt;
    std::optional<Date> only;
    if (!paths.as_of.empty()) {
        auto const source = make_source("<arguments>", "--as-of " + paths.as_of);
        auto const end = static_cast<std::uint32_t>(source->text().size());
        if (!in_force(*shelf, {paths.as_of, {source, 8, end}}, diagnostics)) return std::nullopt;
        only = *parse_date(paths.as_of);
    }
    return audit::Books::open(*shelf, ontology, only, diagnostics);
}

audit::DecisionFile decisions_of(std::string const& name, audit::Books const& books,
                                 Diagnostics& diagnostics) {
    Input input(name);
    auto text = input.whole();
    if (!readable(input, name, diagnostics)) return {};
    auto const format =
        named_csv(name) ? audit::DecisionFormat::csv : audit::DecisionFormat::json_lines;
    return read_decisions(name, std::move(text), format, books.services(), diagnostics);
}

std::string in_format(std::string const& format, AuditReport const& report) {
    if (format == "json") return json_text(audit_json(report));
    if (format == "csv") return audit_csv(report);
    if (format == "html") return audit_html(report);
    return audit_text(report, stdout_has_colour());
}

struct Asked {
    std::string format, cases, decisions;
    bool csv = false, unlisted = false, fixed = false;
    unsigned jobs = 1;
    audit::CaseColumns columns;
    audit::AuditOptions audit;
};

Asked asked(Options const& options) {
    Asked a;
    a.format = options.format({"text", "json", "csv", "html"});
    auto const files = options.all("cases");
    if (files.size() != 1) throw UsageError("audit takes one file of cases, or - for stdin");
    a.cases = files.front();
    a.decisions = options.get("decisions");
    a.csv = one_of(options, "input", "csv", "jsonl", named_csv(a.cases));
    a.unlisted = one_of(options, "unlisted", "not-referred", "unknown", false);
    if (a.unlisted && a.decisions.empty()) throw UsageError("--unlisted goes with --decisions");
    a.fixed = options.has("as-of");
    a.jobs = options.jobs();
    a.columns = columns_of(options);
    a.audit = {options.all("by"), options.whole("list", 20, 0, most_listed),
               options.whole("suppress-below", 0, 2, most_suppressed)};
    return a;
}

/// A column of which no baby has anything puts all of them in one group: a slip of the pen, maybe.
void warn_of_empty_groups(audit::AuditedBabies const& babies, Asked const& a) {
    if (babies.babies.empty()) return;
    std::vector<std::string> there{"month"};
    for (std::size_t i = 0; i < a.columns.named.size(); ++i) {
        bool const any = std::any_of(babies.babies.begin(), babies.babies.end(),
                                     [&](auto const& baby) { return !baby.columns[i].empty(); });
        if (any) there.push_back(a.columns.named[i]);
    }
    for (auto const& by : a.audit.by) {
        if (std::find(there.begin(), there.end(), by) != there.end()) continue;
        auto const help = did_you_mean(by, there);
        report(fmt::format("--by {}: no case has it{}{}\n", by, help.empty() ? "" : "; ", help));
    }
}

int run(Options const& options, Asked const& a) {
    bool const json = a.format == "json";
    Diagnostics diagnostics;
    auto const books = open_books(options, diagnostics);
    if (!books) return print_problems(diagnostics, audit_schema, json), invalid_input;
    audit::DecisionFile decisions;
    if (!a.decisions.empty()) decisions = decisions_of(a.decisions, *books, diagnostics);
    if (diagnostics.has_errors())
        return print_problems(diagnostics, audit_schema, json), invalid_input;
    audit::CasesPlan const plan{*books, a.decisions.empty() ? nullptr : &decisions, a.unlisted,
                                a.columns, !a.fixed};
    Input input(a.cases);
    auto const source = a.csv ? audit::csv_cases(input.bytes(), a.columns, a.cases)
                              : batch::json_lines(input.bytes());
    auto const babies = audit::read_babies(*source, plan, a.jobs, stop_asked());
    if (stop_asked()) return report("interrupted: no report was made\n"), interrupted;
    bool const fine = readable(input, a.cases, diagnostics);
    diagnostics.append(babies.placed_failure);
    if (!babies.failure.empty())
        diagnostics.error("unreadable-cases", {make_source(a.cases, ""), 0, 0},
                          babies.placed_failure.empty()
                              ? babies.failure
                              : "no case was read: the header is not understood");
    if (!fine || !babies.failure.empty())
        return print_problems(diagnostics, audit_schema, json), invalid_input;
    auto const refused = audit::problems(babies, plan, a.cases);
    diagnostics.append(books->problems());
    if (diagnostics.has_errors()) {
        diagnostics.append(refused);
        return print_problems(diagnostics, audit_schema, json), invalid_input;
    }
    if (!refused.empty()) report(diagnostics_text(refused));
    warn_of_empty_groups(babies, a);
    auto const result = audit::audit(babies, plan, a.audit);
    print(in_format(a.format, {result, babies, plan, a.cases, a.decisions}));
    return babies.refused.empty() ? done : invalid_input;
}

}  // namespace

int audit_verb(std::vector<std::string> const& arguments) {
    auto options = make_options();
    if (parse_or_help(options, arguments)) return done;
    auto const what = asked(options);
    watch_signals();
    return run(options, what);
}

}  // namespace asterism::cli
