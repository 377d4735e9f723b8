// SPDX-License-Identifier: MIT
#include <algorithm>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "audit/babies.h"
#include "base/nearest.h"
#include "base/number.h"
#include "batch/csv_rows.h"
#include "batch/json_text.h"
#include "batch/line_reader.h"
#include "cases/csv_record.h"

namespace asterism::audit {

namespace {

constexpr std::size_t enough = batch::longest_line / 2;

class CsvCases final : public batch::LineSource {
public:
    CsvCases(batch::ReadBytes read, CaseColumns const& columns)
        : rows_(std::move(read)), extra_(columns) {}

    bool next(batch::Block& block) override {
        block.clear();
        block.buffer.clear();
        block.counts_lines = false;
        if (columns_.empty() && failure_.empty() && !ended_) read_header();
        while (failure_.empty() && !ended_ && block.buffer.size() < enough) {
            ended_ = !rows_.next(row_);
            if (!ended_) take(block);
        }
        block.size = block.buffer.size();
        block.buffer.resize(block.size + batch::LineReader::padding());
        return block.size > 0 || !block.problems.empty();
    }

    std::string failure() const override { return failure_; }

private:
    void read_header() {
        ended_ = !rows_.next(row_);
        if (ended_) return;
        if (!row_.problem.empty()) {
            failure_ = fmt::format("the header cannot be read: {}", row_.problem);
            return;
        }
        for (auto const& cell : row_.cells) columns_.emplace_back(trim(cell));
        for (auto at = columns_.begin(); at != columns_.end() && failure_.empty(); ++at) check(at);
    }

    void check(std::vector<std::string>::iterator at) {
        if (std::find(columns_.begin(), at, *at) != at)
            failure_ = fmt::format("column `{}` is named twice", *at);
        std::vector<std::string> known(csv_columns().begin(), csv_columns().end());
        if (extra_.has(*at) || std::find(known.begin(), known.end(), *at) != known.end()) return;
        if (*at == "finding") {
            failure_ = "an audit needs one row a baby, this file has one row a finding";
            return;
        }
        known.insert(known.end(), extra_.named.begin(), extra_.named.end());
        auto const help = did_you_mean(*at, known);
        failure_ =
            fmt::format("unknown column `{}`; {}", *at,
                        help.empty() ? "name it with --by to group by it, or with --ignore" : help);
    }

    void take(batch::Block& block) {
        auto problem = row_.problem;
        if (problem.empty() && row_.cells.size() != columns_.size())
            problem = fmt::format("expected {} cells as in the header, found {}", columns_.size(),
                                  row_.cells.size());
        if (!problem.empty()) {
            block.problems.push_back({row_.line, "bad-csv", problem});
            return;
        }
        block.buffer.append(batch::json_text(one_case())).append(1, '\n');
        block.numbers.push_back(row_.line);
    }

    static bool is_case_column(std::string_view name) {
        auto const& known = csv_columns();
        return std::find(known.begin(), known.end(), name) != known.end();
    }

    /// The row as a case, with the columns that only an audit knows beside its keys.
    yaml::Node one_case() const {
        CsvRecord record;
        std::vector<yaml::Entry> extra;
        for (std::size_t i = 0; i < columns_.size(); ++i) {
            Word const cell{std::string(trim(row_.cells[i])), {}};
            if (cell.empty()) continue;
            if (extra_.has(columns_[i]) && !is_case_column(columns_[i]))
                extra.push_back({Word{columns_[i], {}}, yaml::scalar(cell)});
            else
                record.cells.emplace_back(columns_[i], cell);
        }
        auto result = csv_wide_case(record, {});
        result.entries.insert(result.entries.end(), extra.begin(), extra.end());
        return result;
    }

    batch::CsvRows rows_;
    CaseColumns extra_;
    batch::CsvRow row_;
    std::vector<std::string> columns_;
    bool ended_ = false;
    std::string failure_;
};

}  // namespace

bool CaseColumns::has(std::string_view name) const {
    return std::find(named.begin(), named.end(), name) != named.end() ||
           std::find(ignored.begin(), ignored.end(), name) != ignored.end();
}

std::unique_ptr<batch::LineSource> csv_cases(batch::ReadBytes read, CaseColumns const& columns) {
    return std::make_unique<CsvCases>(std::move(read), columns);
}

}  // namespace asterism::audit
