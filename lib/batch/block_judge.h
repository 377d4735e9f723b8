// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "batch/batch_writer.h"
#include "batch/line_reader.h"
#include "batch/line_source.h"

namespace asterism::batch {

/// A line that is no case: what its record says after the number.
struct Refused {
    std::uint64_t line = 1;  ///< as in the block
    std::string record;
};

/// What became of one block.
struct BlockResult {
    std::string out;
    std::vector<Refused> refused;  ///< by line
    std::uint64_t cases = 0;       ///< lines written to `out`
    std::uint64_t lines = 0;       ///< of the file, blank ones too
    bool counts_lines = true;

    void clear();
};

/// What the threads of a batch share.
struct BatchPlan {
    FastBook const& fast;
    BatchWriter const& writer;
    std::string name;      ///< of the file, for messages
    bool explain = false;  ///< everything that `assess` says, instead of the verdicts

    CompiledRulebook const& book() const { return fast.whole(); }
};

/// Judges the lines of blocks, one thread's own. A plain line is read and judged the fast way;
/// any other by the readers and the engine of a single case, so that both mean the same.
class BlockJudge {
public:
    explicit BlockJudge(BatchPlan const& plan);
    void judge(Block const& block, BlockResult& result);

private:
    void line(std::string_view text, std::uint64_t number, BlockResult& result);
    void in_full(std::string_view text, std::uint64_t number, BlockResult& result);
    void answer_in_full(Case const& baby, BlockResult& result);
    /// The next case to be filled; `keep` leaves it for the fast judge.
    FastCase& next();
    void keep(BlockResult& result);
    void answer_waiting(BlockResult& result);

    BatchPlan const& plan_;
    LineReader reader_;
    std::optional<FastJudge> fast_;  ///< none where cases are explained
    std::vector<FastCase> waiting_;  ///< the first `count_` are read and not judged
    std::size_t count_ = 0;
};

}  // namespace asterism::batch
