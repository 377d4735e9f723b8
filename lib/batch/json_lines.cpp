// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cstring>

#include "batch/line_reader.h"
#include "batch/line_source.h"

namespace asterism::batch {

namespace {

/// Small enough to stay near the processor.
constexpr std::size_t usual_block = 1u << 18;

class JsonLines final : public LineSource {
public:
    explicit JsonLines(ReadBytes read) : read_(std::move(read)) {}

    bool next(Block& block) override {
        block.clear();
        block.buffer.resize(std::max(carried_.size(), usual_block) + LineReader::padding());
        std::memcpy(block.buffer.data(), carried_.data(), carried_.size());
        block.size = carried_.size();
        carried_.clear();
        fill(block, usual_block);
        // A line longer than that is rare; then a block is as long as a line may be.
        if (block.text().rfind('\n') == std::string_view::npos) fill(block, longest_line);
        if (block.size == 0) return false;
        return cut(block);
    }

    std::string failure() const override { return {}; }

private:
    void fill(Block& block, std::size_t size) {
        if (!ended_) block.buffer.resize(std::max(block.size, size) + LineReader::padding());
        while (!ended_ && block.size < size) read_more(block);
    }

    void read_more(Block& block) {
        auto const room = block.buffer.size() - LineReader::padding() - block.size;
        auto const got = read_(block.buffer.data() + block.size, room);
        ended_ = !got || *got == 0;
        // What a stopped reader left unfinished is nobody's line.
        stopped_ = !got;
        if (!ended_) block.size += *got;
    }

    /// Keeps what follows the last line end for the next block.
    bool cut(Block& block) {
        auto const last = block.text().rfind('\n');
        if (last == std::string_view::npos) {
            if (ended_) return !stopped_;
            return pass_over(block);
        }
        if (ended_ && !stopped_) return true;
        carried_.assign(block.text().substr(last + 1));
        block.size = last + 1;
        if (stopped_) carried_.clear();
        return true;
    }

    /// The line does not end within the block: drops it up to its end.
    bool pass_over(Block& block) {
        block.problems.push_back({1, "too-long", "the line is longer than 1 MiB"});
        while (!ended_) {
            block.size = 0;
            read_more(block);
            auto const end = block.text().find('\n');
            if (end == std::string_view::npos) continue;
            carried_.assign(block.text().substr(end + 1));
            break;
        }
        block.size = 0;
        return true;
    }

    ReadBytes read_;
    std::string carried_;
    bool ended_ = false;
    bool stopped_ = false;
};

}  // namespace

void Block::clear() {
    size = 0;
    numbers.clear();
    problems.clear();
    counts_lines = true;
}

std::unique_ptr<LineSource> json_lines(ReadBytes read) {
    return std::make_unique<JsonLines>(std::move(read));
}

}  // namespace asterism::batch
