// SPDX-License-Identifier: MIT
#include "batch/csv_lines.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/fold.h"
#include "batch/csv_rows.h"
#include "batch/json_text.h"
#include "batch/line_reader.h"
#include "batch/seen_cases.h"
#include "cases/csv_cases.h"

namespace asterism::batch {

namespace {

/// Half a block: a row grows when its cells get their keys.
constexpr std::size_t enough = longest_line / 2;
constexpr std::size_t bytes_of_a_row = 64;  ///< what its JSON adds to a finding's name

class CsvLines final : public LineSource {
public:
    CsvLines(ReadBytes read, CsvOptions options)
        : options_(std::move(options)), rows_(std::move(read)) {}

    bool next(Block& block) override {
        start(block);
        while (failure_.empty() && !ended_ && block.buffer.size() < enough) {
            CsvRow row;
            ended_ = !rows_.next(row);
            if (ended_)
                finish();
            else
                take(row);
        }
        block.size = block.buffer.size();
        block.buffer.resize(block.size + LineReader::padding());
        return block.size > 0 || !block.problems.empty();
    }

    std::string failure() const override { return failure_; }
    Diagnostics placed_failure() const override { return placed_; }

private:
    void start(Block& block) {
        block.clear();
        block.buffer.clear();
        block.rows.clear();
        block.counts_lines = false;
        block_ = &block;
        if (!form_ && failure_.empty() && !ended_) read_header();
        if (options_.keep_rows) block.form = form_;
    }

    void read_header() {
        CsvRow row;
        ended_ = !rows_.next(row);
        if (ended_) return fail("the file is empty");
        if (!row.problem.empty())
            return fail(fmt::format("the header cannot be read: {}", row.problem));
        auto const source =
            make_source(options_.name, row.text, static_cast<std::uint32_t>(row.line));
        auto form = read_csv_header(csv_header_words(source, row.cells), options_.beside, placed_);
        if (form) form_ = std::make_shared<CsvForm const>(std::move(*form));
        for (auto const& problem : placed_.sorted())
            fail(fmt::format("{}{}{}", problem.message, problem.help.empty() ? "" : "; ",
                             problem.help));
    }

    void fail(std::string why) {
        if (failure_.empty()) failure_ = std::move(why);
    }

    void take(CsvRow& row) {
        any_row_ = true;
        auto const [code, problem] = problem_of(row);
        if (!problem.empty()) {
            block_->problems.push_back({row.line, std::string(code), problem});
            // Nobody knows whose row it was: the case before it, or the one behind it.
            broken_ = poisoned_ = form_->is_long;
        } else if (form_->is_long) {
            take_finding(row);
        } else {
            auto const baby = csv_record(*form_, row.cells);
            emit(row.line, json_text(csv_wide_case(baby, *form_, {})), std::move(row.text));
        }
    }

    std::pair<std::string_view, std::string> problem_of(CsvRow const& row) const {
        if (!row.problem.empty()) return {"bad-csv", row.problem};
        for (auto const& cell : row.cells) {
            if (!is_utf8(cell)) return {"not-utf8", "the row is not well-formed UTF-8"};
            if (cell.find('\0') != std::string::npos)
                return {"nul-byte", "a NUL byte cannot stand in a text file"};
        }
        auto const columns = form_->columns.size();
        if (row.cells.size() == columns) return {};
        return {"bad-csv", fmt::format("expected {} cells as in the header, found {}", columns,
                                       row.cells.size())};
    }

    void take_finding(CsvRow const& row) {
        auto const record = csv_record(*form_, row.cells);
        auto id = record.cell("case").text;
        if (gathered_.empty() || id != case_) start_case(row.line, std::move(id));
        poisoned_ = false;
        Diagnostics diagnostics;
        gathered_.add(record, *form_, {}, diagnostics);
        for (auto const& problem : diagnostics.sorted()) {
            if (!options_.keep_rows)
                block_->problems.push_back({row.line, problem.code, problem.message});
            wrong_ = true;
        }
        keep(row);
        for (auto const& cell : record.cells) bytes_ += cell.second.text.size();
        bytes_ += bytes_of_a_row;
        if (bytes_ > enough) broken_ = true, gathered_.drop_findings(), kept_.clear();
    }

    /// Adds a row's text where it stands in the file, counted from the case's first row.
    void keep(CsvRow const& row) {
        if (!options_.keep_rows || bytes_ > enough) return;
        auto const down = row.line - first_line_;
        auto const ends = kept_.empty() ? 0 : down > kept_lines_ ? down - kept_lines_ : 1;
        kept_.append(ends, '\n').append(row.text);
        kept_lines_ +=
            ends + static_cast<std::uint64_t>(std::count(row.text.begin(), row.text.end(), '\n'));
    }

    void start_case(std::uint64_t line, std::string id) {
        finish_case();
        case_ = std::move(id);
        first_line_ = line;
        broken_ = poisoned_;
        wrong_ = poisoned_ = false;
        bytes_ = 0;
        kept_lines_ = 0;
    }

    void finish() {
        finish_case();
        if (!any_row_) fail("the table has no rows");
    }

    void finish_case() {
        if (gathered_.empty()) return;
        // Who keeps rows remembers every case, and tells what comes again.
        if (!options_.keep_rows && !case_.empty() && !seen_.add(case_)) {
            refuse("rows-apart",
                   csv_rows_apart(case_) + "; what was said of it before lacks these");
        } else if (broken_ || (wrong_ && !options_.keep_rows)) {
            refuse("bad-csv", fmt::format("a row that may be of case `{}` cannot be read", case_));
        } else if (wrong_) {
            refuse("", "");
        } else {
            emit(first_line_, json_text(gathered_.node(*form_, {})), std::move(kept_));
        }
        gathered_ = {};
        kept_.clear();
    }

    void refuse(std::string code, std::string message) {
        LineProblem problem{first_line_, std::move(code), std::move(message)};
        if (options_.keep_rows) problem.id = case_, problem.rows = std::move(kept_);
        block_->problems.push_back(std::move(problem));
    }

    void emit(std::uint64_t line, std::string const& json, std::string rows) {
        block_->buffer.append(json).append(1, '\n');
        block_->numbers.push_back(line);
        if (options_.keep_rows) block_->rows.push_back(std::move(rows));
    }

    CsvOptions options_;
    CsvRows rows_;
    Block* block_ = nullptr;
    std::shared_ptr<CsvForm const> form_;
    bool ended_ = false;
    bool any_row_ = false;
    std::string failure_;
    Diagnostics placed_;
    // The case of the long form that is being gathered.
    std::string case_;
    std::uint64_t first_line_ = 1;
    CsvLongCase gathered_;
    std::string kept_;              ///< its rows as they stand in the file
    std::uint64_t kept_lines_ = 0;  ///< line ends in them
    SeenCases seen_;
    std::size_t bytes_ = 0;
    bool broken_ = false;    ///< this case lacks a row
    bool wrong_ = false;     ///< its rows say what cannot be, or contradict each other
    bool poisoned_ = false;  ///< the next case may lack its first row
};

}  // namespace

std::unique_ptr<LineSource> csv_lines(ReadBytes read, CsvOptions options) {
    return std::make_unique<CsvLines>(std::move(read), std::move(options));
}

}  // namespace asterism::batch
