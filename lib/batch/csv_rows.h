// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <deque>
#include <memory>
#include <string>
#include <vector>

#include "batch/line_source.h"

namespace asterism::batch {

/// One record of a CSV stream and the line on which it began.
struct CsvRow {
    std::uint64_t line = 1;
    std::vector<std::string> cells;
    std::string problem;  ///< why it is no record; the cells are then empty
    /// As it stands in the file, from line `line` on, without its end. Where a lone CR ends lines,
    /// several records are of one line: then the same cells, written anew.
    std::string text{};
};

/// Reads RFC 4180 records one by one with libcsv. A line whose quoting is broken is given back as
/// a problem and reading goes on behind that line, so one stray quote costs one record. Memory is
/// bounded by the longest record.
class CsvRows {
public:
    static constexpr std::size_t longest_record = 1u << 16;

    explicit CsvRows(ReadBytes read);
    ~CsvRows();
    /// False at the end.
    bool next(CsvRow& row);

private:
    class Parser;

    struct Line {
        std::uint64_t number = 1;
        std::string text;
        bool too_long = false;
    };

    bool next_line(Line& line);
    bool read_line(Line& line);
    void tidy(Line& line) const;
    bool more();
    void feed(Line line);
    void give_up(std::string why);
    std::string take_text();

    ReadBytes read_;
    std::string buffer_;
    std::size_t at_ = 0;
    std::uint64_t lines_ = 0;
    std::deque<Line> again_;    ///< lines behind a broken one, to be read afresh
    std::vector<Line> record_;  ///< lines of the record that is not complete yet
    std::deque<CsvRow> ready_;
    std::unique_ptr<Parser> parser_;
};

}  // namespace asterism::batch
