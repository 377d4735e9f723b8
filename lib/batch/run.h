// SPDX-License-Identifier: MIT
#pragma once

#include <atomic>
#include <functional>

#include "batch/block_judge.h"

namespace asterism::batch {

/// Where a batch writes. Called in the order of the input, by one thread at a time.
struct BatchSink {
    /// Whole lines; false when they could not be written, which ends the batch.
    std::function<bool(std::string_view lines)> out;
    /// A refused line: its number in the file and its record, as made by the writer.
    std::function<bool(std::uint64_t line, std::string_view record)> refused;
    /// After each block: cases and refused lines so far.
    std::function<void(std::uint64_t cases, std::uint64_t refused)> progress;
};

struct BatchOutcome {
    std::uint64_t cases = 0;
    std::uint64_t refused = 0;
    bool stopped = false;  ///< by the caller's flag; what was written is whole lines
    bool write_failed = false;
    std::string failure;  ///< why the input could not be read to its end
};

/// Judges a stream of cases with some threads. Each thread takes a block, judges it and waits for
/// its turn to write, so that memory is bounded by one block a thread and the output does not
/// depend on their number. `stop` may be set at any time, also by a signal handler.
BatchOutcome run_batch(LineSource& source, BatchPlan const& plan, unsigned jobs,
                       BatchSink const& sink, std::atomic<bool> const& stop);

}  // namespace asterism::batch
