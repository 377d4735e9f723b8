// SPDX-License-Identifier: MIT
#pragma once

#include <chrono>
#include <cstdint>
#include <string>
#include <string_view>

namespace asterism::cli {

/// What a batch tells people on stderr while it runs and at its end.
class BatchReport {
public:
    explicit BatchReport(std::string const& file);

    /// Called after each block; prints at most once a second, and only after the first one.
    void progress(std::uint64_t cases, std::uint64_t refused);
    /// Prints the first refused lines; the rest are counted.
    void refused(std::uint64_t line, std::string_view record);
    /// Notes a refused line that stands in a file of its own.
    void recorded(std::string_view record);
    /// The last words: what was done, what was refused, and where to look.
    void finish(std::uint64_t cases, std::uint64_t refused, std::string const& rejects_file);

private:
    using Clock = std::chrono::steady_clock;

    double seconds() const;
    void end_progress_line();

    std::string file_;
    Clock::time_point start_ = Clock::now();
    Clock::time_point last_ = start_;
    bool terminal_;
    bool on_progress_line_ = false;
    std::uint64_t printed_ = 0;
    std::uint64_t with_red_flags_ = 0;
};

}  // namespace asterism::cli
