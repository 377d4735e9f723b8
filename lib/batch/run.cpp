// SPDX-License-Identifier: MIT
#include "batch/run.h"

#include <condition_variable>
#include <exception>
#include <mutex>
#include <thread>

namespace asterism::batch {

namespace {

class Run {
public:
    Run(LineSource& source, BatchPlan const& plan, BatchSink const& sink,
        std::atomic<bool> const& stop)
        : source_(source), plan_(plan), sink_(sink), stop_(stop) {}

    BatchOutcome go(unsigned jobs) {
        std::vector<std::thread> others;
        for (unsigned i = 1; i < jobs; ++i) others.emplace_back([this] { work(); });
        work();
        for (auto& thread : others) thread.join();
        if (problem_) std::rethrow_exception(problem_);
        outcome_.failure = source_.failure();
        outcome_.stopped = stop_ && !ended_;
        return outcome_;
    }

private:
    void work() {
        try {
            BlockJudge judge(plan_);
            Block block;
            BlockResult result;
            std::uint64_t turn = 0;
            while (take(block, turn)) {
                judge.judge(block, result);
                give(result, turn);
            }
        } catch (...) {
            std::lock_guard const lock(output_);
            if (!problem_) problem_ = std::current_exception();
            give_up_ = true;
            turn_came_.notify_all();
        }
    }

    bool take(Block& block, std::uint64_t& turn) {
        std::lock_guard const lock(input_);
        if (ended_ || stop_ || give_up_) return false;
        if (!source_.next(block)) {
            ended_ = !stop_;
            return false;
        }
        turn = taken_++;
        return true;
    }

    void give(BlockResult const& result, std::uint64_t turn) {
        std::unique_lock lock(output_);
        turn_came_.wait(lock, [&] { return written_ == turn || give_up_; });
        if (give_up_) return;
        if (!write(result)) {
            outcome_.write_failed = true;
            give_up_ = true;
        }
        ++written_;
        turn_came_.notify_all();
    }

    bool write(BlockResult const& result) {
        if (!result.out.empty() && !sink_.out(result.out)) return false;
        auto const before = result.counts_lines ? lines_ : 0;
        for (auto const& refused : result.refused) {
            if (!sink_.refused(before + refused.line, refused.record)) return false;
        }
        lines_ += result.lines;
        outcome_.cases += result.cases;
        outcome_.refused += result.refused.size();
        if (sink_.progress) sink_.progress(outcome_.cases, outcome_.refused);
        return true;
    }

    LineSource& source_;
    BatchPlan const& plan_;
    BatchSink const& sink_;
    std::atomic<bool> const& stop_;

    std::mutex input_;
    std::uint64_t taken_ = 0;
    bool ended_ = false;

    std::mutex output_;
    std::condition_variable turn_came_;
    std::uint64_t written_ = 0;
    std::uint64_t lines_ = 0;
    std::atomic<bool> give_up_ = false;
    std::exception_ptr problem_;
    BatchOutcome outcome_;
};

}  // namespace

BatchOutcome run_batch(LineSource& source, BatchPlan const& plan, unsigned jobs,
                       BatchSink const& sink, std::atomic<bool> const& stop) {
    return Run(source, plan, sink, stop).go(jobs == 0 ? 1 : jobs);
}

}  // namespace asterism::batch
