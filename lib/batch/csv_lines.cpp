// SPDX-License-Identifier: MIT
#include "batch/csv_lines.h"

#include <algorithm>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "base/diagnostic.h"
#include "base/fold.h"
#include "base/nearest.h"
#include "base/number.h"
#include "batch/csv_rows.h"
#include "batch/json_text.h"
#include "batch/line_reader.h"
#include "batch/seen_cases.h"
#include "cases/csv_record.h"

namespace asterism::batch {

namespace {

/// Half a block: a row grows when its cells get their keys.
constexpr std::size_t enough = longest_line / 2;
constexpr std::size_t bytes_of_a_row = 64;  ///< what its JSON adds to a finding's name

class CsvLines final : public LineSource {
public:
    explicit CsvLines(ReadBytes read) : rows_(std::move(read)) {}

    bool next(Block& block) override {
        block.clear();
        block.buffer.clear();
        block.counts_lines = false;
        block_ = &block;
        if (columns_.empty() && failure_.empty() && !ended_) read_header();
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

private:
    void read_header() {
        CsvRow row;
        ended_ = !rows_.next(row);
        if (ended_) return fail("the file is empty");
        if (!row.problem.empty())
            return fail(fmt::format("the header cannot be read: {}", row.problem));
        long_form_ = is_csv_long_form(row.cells);
        for (auto const& cell : row.cells) add_column(cell);
    }

    void add_column(std::string const& name) {
        auto const& known = long_form_ ? csv_long_columns() : csv_columns();
        auto const found = std::find(known.begin(), known.end(), name);
        if (found == known.end()) {
            std::vector<std::string> const names(known.begin(), known.end());
            auto const help = did_you_mean(name, names);
            return fail(fmt::format(
                "unknown column `{}`; {}", name,
                help.empty() ? fmt::format("accepted: {}", fmt::join(names, ", ")) : help));
        }
        if (std::find(columns_.begin(), columns_.end(), *found) != columns_.end())
            return fail(fmt::format("column `{}` is named twice", name));
        columns_.push_back(*found);
    }

    void fail(std::string why) {
        if (failure_.empty()) failure_ = std::move(why);
    }

    void take(CsvRow const& row) {
        any_row_ = true;
        auto const [code, problem] = problem_of(row);
        if (!problem.empty()) {
            block_->problems.push_back({row.line, std::string(code), problem});
            // Nobody knows whose row it was: the case before it, or the one behind it.
            broken_ = poisoned_ = long_form_;
        } else if (long_form_) {
            take_finding(row.line, record(row));
        } else {
            emit(row.line, json_text(csv_wide_case(record(row), {})));
        }
    }

    std::pair<std::string_view, std::string> problem_of(CsvRow const& row) const {
        if (!row.problem.empty()) return {"bad-csv", row.problem};
        for (auto const& cell : row.cells) {
            if (!is_utf8(cell)) return {"not-utf8", "the row is not well-formed UTF-8"};
            if (cell.find('\0') != std::string::npos)
                return {"nul-byte", "a NUL byte cannot stand in a text file"};
        }
        if (row.cells.size() == columns_.size()) return {};
        return {"bad-csv", fmt::format("expected {} cells as in the header, found {}",
                                       columns_.size(), row.cells.size())};
    }

    CsvRecord record(CsvRow const& row) const {
        CsvRecord result;
        for (std::size_t i = 0; i < columns_.size(); ++i) {
            auto const cell = trim(row.cells[i]);
            if (!cell.empty()) result.cells.push_back({columns_[i], {std::string(cell), {}}});
        }
        return result;
    }

    void take_finding(std::uint64_t line, CsvRecord finding) {
        auto id = finding.cell("case").text;
        if (findings_.empty() || id != case_) start_case(line, std::move(id));
        poisoned_ = false;
        Diagnostics diagnostics;
        bool const has_case = std::find(columns_.begin(), columns_.end(), "case") != columns_.end();
        check_csv_long(finding, has_case, {}, diagnostics);
        for (auto const& problem : diagnostics.sorted()) {
            block_->problems.push_back({line, problem.code, problem.message});
            broken_ = true;
        }
        bytes_ += finding.cell("finding").text.size() + bytes_of_a_row;
        findings_.push_back(std::move(finding));
        if (bytes_ > enough) broken_ = true, findings_.resize(1);
    }

    void start_case(std::uint64_t line, std::string id) {
        finish_case();
        case_ = std::move(id);
        first_line_ = line;
        broken_ = poisoned_;
        poisoned_ = false;
        bytes_ = 0;
    }

    void finish() {
        finish_case();
        if (!any_row_) fail("the table has no rows");
    }

    void finish_case() {
        if (findings_.empty()) return;
        bool const again = !case_.empty() && !seen_.add(case_);
        if (again) {
            block_->problems.push_back(
                {first_line_, "rows-apart",
                 csv_rows_apart(case_) + "; what was said of it before lacks these"});
        } else if (!broken_) {
            emit(first_line_, json_text(csv_long_case(findings_, {})));
        } else {
            block_->problems.push_back(
                {first_line_, "bad-csv",
                 fmt::format("a row that may be of case `{}` cannot be read", case_)});
        }
        findings_.clear();
    }

    void emit(std::uint64_t line, std::string const& json) {
        block_->buffer.append(json).append(1, '\n');
        block_->numbers.push_back(line);
    }

    CsvRows rows_;
    Block* block_ = nullptr;
    std::vector<std::string_view> columns_;  ///< as they stand in the file
    bool long_form_ = false;
    bool ended_ = false;
    bool any_row_ = false;
    std::string failure_;
    // The case of the long form that is being gathered.
    std::string case_;
    std::uint64_t first_line_ = 1;
    std::vector<CsvRecord> findings_;
    SeenCases seen_;
    std::size_t bytes_ = 0;
    bool broken_ = false;    ///< this case lacks a row
    bool poisoned_ = false;  ///< the next case may lack its first row
};

}  // namespace

std::unique_ptr<LineSource> csv_lines(ReadBytes read) {
    return std::make_unique<CsvLines>(std::move(read));
}

}  // namespace asterism::batch
