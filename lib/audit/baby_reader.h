// SPDX-License-Identifier: MIT
#pragma once

#include "audit/babies.h"
#include "audit/line_parts.h"
#include "batch/line_reader.h"

namespace asterism::audit {

/// What one block of lines holds.
struct BlockBabies {
    std::vector<AuditedBaby> babies;
    std::vector<RefusedLine> refused;
    std::uint64_t lines = 0;  ///< of the file
    bool counts_lines = true;
    std::shared_ptr<CsvForm const> form;  ///< of CSV
};

/// Reads and judges the lines of blocks, one thread's own: what the audit wants of a line is cut
/// out first, the rest goes to the readers of a batch.
class BabyReader {
public:
    explicit BabyReader(CasesPlan const& plan);
    BlockBabies read(batch::Block& block);

private:
    struct Parts {
        std::string id, day, decisions;
        std::vector<std::string> columns;
    };

    /// Babies of one book that are read and not judged: many are judged at once.
    struct Waiting {
        explicit Waiting(ReadyBook const& ready) : judge(ready.fast) {}

        batch::FastJudge judge;
        std::vector<batch::FastCase> cases;  ///< as many as `babies`, or more
        std::vector<std::size_t> babies;     ///< their places among the block's
    };

    void line(char* text, std::size_t size, std::uint64_t number);
    bool cut(char* text, std::string_view line, AuditedBaby& baby, Parts& parts);
    bool column(LineMember const& member, Parts& parts) const;
    bool set_day(AuditedBaby& baby, std::string const& text);
    bool read_plain(std::string_view line, Waiting& waiting);
    bool judge_in_full(std::string_view line, ReadyBook const& ready, AuditedBaby& baby);
    void judge_waiting();
    void keep_lines();
    void join(AuditedBaby& baby, batch::Answers const& answers) const;
    bool decide(AuditedBaby& baby, Parts const& parts);
    bool own_decisions(std::string const& text, AuditedBaby& baby);
    void apply(CaseDecisions const& decisions, AuditedBaby& baby) const;
    bool refuse(std::string_view code, std::string message, std::string_view about = {});

    CasesPlan const& plan_;
    batch::LineReader reader_;
    std::vector<std::optional<Waiting>> waiting_;  ///< by book
    std::vector<std::string_view> lines_;          ///< by baby
    std::vector<LineMember> members_;
    std::vector<bool> removed_;
    std::string last_day_;
    Date day_{};
    std::optional<std::size_t> day_book_;
    BlockBabies* out_ = nullptr;
    std::uint64_t number_ = 0;
    std::string_view line_;
    std::string_view written_;  ///< the case as it stands in the file
    std::string id_;
};

}  // namespace asterism::audit
