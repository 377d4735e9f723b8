// SPDX-License-Identifier: MIT
#include "batch/csv_rows.h"

#include <algorithm>
#include <new>

#include <csv.h>

#include "cases/csv_record.h"

namespace asterism::batch {

namespace {

/// The cells as a record, quoted where they must be.
std::string written(std::vector<std::string> const& cells) {
    std::string text;
    for (auto const& cell : cells) {
        if (&cell != &cells.front()) text += ',';
        text += csv_quoted(cell);
    }
    return text;
}

}  // namespace

/// libcsv reports no places, so it is fed line by line. An exception must not cross its callbacks.
class CsvRows::Parser {
public:
    Parser() {
        if (csv_init(&parser_, CSV_STRICT | CSV_STRICT_FINI) != 0) throw std::bad_alloc();
    }
    ~Parser() { csv_free(&parser_); }
    Parser(Parser const&) = delete;
    Parser& operator=(Parser const&) = delete;

    /// False when the quoting is broken.
    bool feed(std::string const& line) {
        bool const fine = csv_parse(&parser_, line.data(), line.size(), end_of_cell, end_of_row,
                                    this) == line.size() &&
                          csv_parse(&parser_, "\n", 1, end_of_cell, end_of_row, this) == 1;
        if (out_of_memory_) throw std::bad_alloc();
        return fine;
    }

    std::vector<std::vector<std::string>> rows;

private:
    static void end_of_cell(void* text, std::size_t size, void* data) {
        auto& self = *static_cast<Parser*>(data);
        try {
            self.cells_.emplace_back(static_cast<char const*>(text), size);
        } catch (std::bad_alloc const&) {
            self.out_of_memory_ = true;
        }
    }

    static void end_of_row(int /*terminator*/, void* data) {
        auto& self = *static_cast<Parser*>(data);
        try {
            self.rows.push_back(std::move(self.cells_));
        } catch (std::bad_alloc const&) {
            self.out_of_memory_ = true;
        }
        self.cells_.clear();
    }

    csv_parser parser_{};
    std::vector<std::string> cells_;
    bool out_of_memory_ = false;
};

CsvRows::CsvRows(ReadBytes read) : read_(std::move(read)), parser_(std::make_unique<Parser>()) {}
CsvRows::~CsvRows() = default;

bool CsvRows::next(CsvRow& row) {
    Line line;
    while (ready_.empty()) {
        if (next_line(line)) {
            feed(std::move(line));
        } else if (!record_.empty()) {
            give_up("a quoted cell is not closed");
        } else {
            return false;
        }
    }
    row = std::move(ready_.front());
    ready_.pop_front();
    return true;
}

void CsvRows::feed(Line line) {
    bool const blank = line.text.find_first_not_of(" \t\n") == std::string::npos;
    if (record_.empty() && blank && !line.too_long) return;
    record_.push_back(std::move(line));
    if (record_.back().too_long) return give_up("the line is longer than 1 MiB");
    if (!parser_->feed(record_.back().text)) return give_up("a quote inside a cell is not doubled");
    std::size_t size = 0;
    for (auto const& part : record_) size += part.text.size();
    bool const alone = parser_->rows.size() == 1;
    for (auto& cells : parser_->rows) {
        auto text = alone ? take_text() : written(cells);
        ready_.push_back({record_.front().number, std::move(cells), {}, std::move(text)});
    }
    if (!parser_->rows.empty()) {
        parser_->rows.clear();
        record_.clear();
    } else if (size > longest_record) {
        give_up("a quoted cell that opens here is not closed");
    }
}

/// The lines of the record, of which nothing is needed any more.
std::string CsvRows::take_text() {
    auto text = std::move(record_.front().text);
    for (auto part = record_.begin() + 1; part != record_.end(); ++part)
        text.append(1, '\n').append(part->text);
    return text;
}

/// The record's first line is the problem; those behind it may be sound.
void CsvRows::give_up(std::string why) {
    ready_.push_back({record_.front().number, {}, std::move(why)});
    again_.insert(again_.begin(), std::make_move_iterator(record_.begin() + 1),
                  std::make_move_iterator(record_.end()));
    record_.clear();
    parser_ = std::make_unique<Parser>();
}

bool CsvRows::next_line(Line& line) {
    if (again_.empty()) return read_line(line);
    line = std::move(again_.front());
    again_.pop_front();
    return true;
}

bool CsvRows::more() {
    buffer_.erase(0, at_);
    at_ = 0;
    auto const old = buffer_.size();
    buffer_.resize(old + longest_record);
    auto const got = read_(buffer_.data() + old, longest_record);
    buffer_.resize(old + got.value_or(0));
    return got.value_or(0) > 0;
}

bool CsvRows::read_line(Line& line) {
    line = {++lines_, {}, false};
    auto searched = at_;
    while (true) {
        auto const end = buffer_.find('\n', searched);
        bool const found = end != std::string::npos;
        auto const size = (found ? end : buffer_.size()) - at_;
        line.too_long = line.too_long || size > longest_line;
        if (line.too_long) at_ = found ? end : buffer_.size();
        if (found) {
            if (!line.too_long) line.text.assign(buffer_, at_, size);
            at_ = end + 1;
            break;
        }
        auto const left = buffer_.size() - at_;
        if (!more()) {
            line.text.assign(buffer_, at_, left);
            at_ = buffer_.size();
            if (line.text.empty() && !line.too_long) return false;
            break;
        }
        searched = at_ + left;
    }
    tidy(line);
    return true;
}

/// A lone CR ends a line too, as in files from old machines; it then stands as an LF in the text.
void CsvRows::tidy(Line& line) const {
    if (line.text.ends_with('\r')) line.text.pop_back();
    std::replace(line.text.begin(), line.text.end(), '\r', '\n');
    if (lines_ == 1 && line.text.starts_with("\xEF\xBB\xBF")) line.text.erase(0, 3);
}

}  // namespace asterism::batch
