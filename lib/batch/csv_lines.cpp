// SPDX-License-Identifier: MIT
#include "batch/csv_lines.h"

#include <algorithm>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "base/nearest.h"
#include "base/number.h"
#include "batch/csv_rows.h"
#include "batch/csv_to_json.h"
#include "batch/line_reader.h"

namespace asterism::batch {

namespace {

/// Half a block: a row grows when its cells get their keys.
constexpr std::size_t enough = longest_line / 2;

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
                finish_case();
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
        if (ended_) return;
        if (!row.problem.empty()) {
            failure_ = fmt::format("the header cannot be read: {}", row.problem);
            return;
        }
        if (!row.cells.empty() && row.cells.front().starts_with("\xEF\xBB\xBF"))
            row.cells.front().erase(0, 3);
        for (auto const& cell : row.cells) columns_.emplace_back(trim(cell));
        long_form_ = std::find(columns_.begin(), columns_.end(), "finding") != columns_.end();
        check_columns();
    }

    void check_columns() {
        std::vector<std::string> known;
        for (auto const name : long_form_ ? long_columns() : wide_columns())
            known.emplace_back(name);
        for (auto at = columns_.begin(); at != columns_.end(); ++at) {
            if (std::find(columns_.begin(), at, *at) != at)
                failure_ = fmt::format("column `{}` is named twice", *at);
            if (std::find(known.begin(), known.end(), *at) != known.end()) continue;
            auto const help = did_you_mean(*at, known);
            failure_ = fmt::format(
                "unknown column `{}`; {}", *at,
                help.empty() ? fmt::format("accepted: {}", fmt::join(known, ", ")) : help);
        }
    }

    void take(CsvRow const& row) {
        auto problem = row.problem;
        if (problem.empty() && row.cells.size() != columns_.size())
            problem = fmt::format("expected {} cells as in the header, found {}", columns_.size(),
                                  row.cells.size());
        if (!problem.empty()) {
            block_->problems.push_back({row.line, "bad-csv", problem});
            // Nobody knows whose row it was: the case before it, or the one behind it.
            broken_ = poisoned_ = long_form_;
        } else if (long_form_) {
            take_finding(row);
        } else {
            take_baby(row);
        }
    }

    void take_baby(CsvRow const& row) {
        std::vector<std::pair<std::string_view, std::string_view>> cells;
        for (std::size_t i = 0; i < columns_.size(); ++i)
            cells.emplace_back(columns_[i], trim(row.cells[i]));
        emit(row.line, json_case(cells));
    }

    std::string cell(CsvRow const& row, std::string_view column) const {
        auto const at = std::find(columns_.begin(), columns_.end(), column);
        return at == columns_.end()
                   ? std::string()
                   : std::string(trim(row.cells[static_cast<std::size_t>(at - columns_.begin())]));
    }

    void take_finding(CsvRow const& row) {
        auto id = cell(row, "case");
        if (findings_.empty() || id != case_) start_case(row.line, std::move(id));
        poisoned_ = false;
        LongRow finding{cell(row, "finding"), cell(row, "state"), cell(row, "side"),
                        cell(row, "familial")};
        bool const known = finding.state.empty() || finding.state == "present" ||
                           finding.state == "absent" || finding.state == "unsure";
        if (!known) {
            block_->problems.push_back(
                {row.line, "unknown-state",
                 fmt::format("unknown state `{}`; accepted: present, absent, unsure",
                             finding.state)});
            broken_ = true;
        }
        findings_.push_back(std::move(finding));
        bytes_ += findings_.back().finding.size() + 64;
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

    void finish_case() {
        if (findings_.empty()) return;
        if (!broken_) {
            emit(first_line_, json_case(case_, findings_));
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
    std::vector<std::string> columns_;
    bool long_form_ = false;
    bool ended_ = false;
    std::string failure_;
    // The case of the long form that is being gathered.
    std::string case_;
    std::uint64_t first_line_ = 1;
    std::vector<LongRow> findings_;
    std::size_t bytes_ = 0;
    bool broken_ = false;    ///< this case lacks a row
    bool poisoned_ = false;  ///< the next case may lack its first row
};

}  // namespace

std::vector<std::string_view> const& wide_columns() {
    static std::vector<std::string_view> const columns{
        "case",     "sex",    "gestation", "age",      "born",    "examined-on", "examined",
        "findings", "absent", "unsure",    "measures", "history", "referred",    "decided-on"};
    return columns;
}

std::vector<std::string_view> const& long_columns() {
    static std::vector<std::string_view> const columns{"case", "finding", "state", "side",
                                                       "familial"};
    return columns;
}

std::unique_ptr<LineSource> csv_lines(ReadBytes read) {
    return std::make_unique<CsvLines>(std::move(read));
}

}  // namespace asterism::batch
