// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"

namespace asterism {

struct CsvForm;

}  // namespace asterism

namespace asterism::batch {

/// Puts up to `size` bytes where `to` points and says how many: 0 at the end, nothing when it was
/// stopped or failed. Whoever gives the bytes remembers why.
using ReadBytes = std::function<std::optional<std::size_t>(char* to, std::size_t size)>;

/// Lines are cut off at this length: a case is a few hundred bytes.
inline constexpr std::size_t longest_line = 1u << 20;

/// Something wrong before a line could be read as a case.
struct LineProblem {
    std::uint64_t line = 1;  ///< as in `Block`
    std::string code;
    std::string message;  ///< empty: `rows`, read again, tell what is wrong, at its place
    // What a source that keeps rows knows of a case:
    std::string id{};
    std::string rows{};  ///< as in `Block`
};

/// Some whole lines, one JSON case each, and how to number them.
struct Block {
    std::string buffer;
    std::size_t size = 0;  ///< bytes in use; padding for the parser stands behind them
    /// Numbers of the lines in the file. Empty: the lines follow on those of the block before.
    std::vector<std::uint64_t> numbers;
    std::vector<LineProblem> problems;
    // Of a source that keeps rows:
    std::vector<std::string> rows;        ///< what stands in the file, by line of the buffer
    std::shared_ptr<CsvForm const> form;  ///< what its columns mean
    bool counts_lines = true;  ///< line numbers count from the block's first line, not the file's

    std::string_view text() const { return std::string_view(buffer).substr(0, size); }
    void clear();
};

/// Cuts a stream into blocks of whole lines. Called by one thread at a time.
class LineSource {
public:
    virtual ~LineSource() = default;
    /// False at the end, or when reading cannot go on; then see `failure`.
    virtual bool next(Block& block) = 0;
    /// Why reading ended before the end of the data, in the words of a diagnostic; empty when it
    /// did not.
    virtual std::string failure() const = 0;
    /// The same, all of it and each thing at its place, where that is known.
    virtual Diagnostics placed_failure() const { return {}; }
};

/// One JSON value a line. A line longer than `longest_line` is passed over and reported; memory
/// stays bounded by a block and a line.
std::unique_ptr<LineSource> json_lines(ReadBytes read);

/// The same bytes, unpacked when they are gzip (one member or several); `failure` tells of damage.
struct Unpacked {
    ReadBytes read;
    std::function<std::string()> failure;
};
Unpacked unpacked(ReadBytes read);

}  // namespace asterism::batch
