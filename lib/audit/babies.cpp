// SPDX-License-Identifier: MIT
#include "audit/babies.h"

#include <algorithm>
#include <mutex>
#include <thread>

#include <fmt/format.h>

#include "audit/baby_reader.h"
#include "cases/csv_cases.h"
#include "cases/read_case.h"
#include "yaml/read.h"

namespace asterism::audit {

namespace {

/// Blocks are taken by threads and put back in the order of the file.
class Reading {
public:
    Reading(batch::LineSource& source, CasesPlan const& plan, std::atomic<bool> const& stop)
        : source_(source), plan_(plan), stop_(stop) {}

    AuditedBabies go(unsigned jobs) {
        std::vector<std::thread> others;
        for (unsigned i = 1; i < jobs; ++i) others.emplace_back([this] { work(); });
        work();
        for (auto& thread : others) thread.join();
        if (problem_) std::rethrow_exception(problem_);
        AuditedBabies result;
        std::uint64_t before = 0;
        for (auto& part : parts_) add(part, before, result);
        result.failure = source_.failure();
        result.placed_failure = source_.placed_failure();
        return result;
    }

private:
    void work() try {
        BabyReader reader(plan_);
        batch::Block block;
        std::size_t turn = 0;
        while (take(block, turn)) {
            auto part = reader.read(block);
            std::lock_guard const lock(output_);
            if (parts_.size() <= turn) parts_.resize(turn + 1);
            parts_[turn] = std::move(part);
        }
    } catch (...) {
        std::lock_guard const lock(output_);
        if (!problem_) problem_ = std::current_exception();
    }

    bool take(batch::Block& block, std::size_t& turn) {
        std::lock_guard const lock(input_);
        if (ended_ || stop_) return false;
        ended_ = !source_.next(block);
        if (!ended_) turn = taken_++;
        return !ended_;
    }

    static void add(BlockBabies& part, std::uint64_t& before, AuditedBabies& result) {
        if (part.form) result.form = part.form;
        for (auto& baby : part.babies) {
            baby.line += part.counts_lines ? before : 0;
            result.babies.push_back(std::move(baby));
        }
        for (auto& refused : part.refused) {
            refused.line += part.counts_lines ? before : 0;
            result.refused.push_back(std::move(refused));
        }
        before += part.lines;
    }

    batch::LineSource& source_;
    CasesPlan const& plan_;
    std::atomic<bool> const& stop_;
    std::mutex input_;
    bool ended_ = false;
    std::size_t taken_ = 0;
    std::mutex output_;
    std::vector<BlockBabies> parts_;
    std::exception_ptr problem_;
};

/// A name for a case is a key to its decisions: the second case of a name is refused.
void refuse_doubles(AuditedBabies& babies) {
    std::unordered_map<std::string_view, std::uint64_t> first;
    std::vector<bool> twice(babies.babies.size(), false);
    first.reserve(babies.babies.size());
    for (std::size_t i = 0; i < babies.babies.size(); ++i) {
        auto const& baby = babies.babies[i];
        auto const [known, is_new] = first.emplace(baby.id, baby.line);
        if (is_new) continue;
        twice[i] = true;
        babies.refused.push_back(
            {baby.line,
             "duplicate-case",
             fmt::format("case `{}` stands twice, first in line {}", baby.id, known->second),
             {}});
    }
    if (std::find(twice.begin(), twice.end(), true) == twice.end()) return;
    std::vector<AuditedBaby> kept;
    for (std::size_t i = 0; i < twice.size(); ++i) {
        if (!twice[i]) kept.push_back(std::move(babies.babies[i]));
    }
    babies.babies = std::move(kept);
}

/// Where the rows of a case begin, and whether some stand apart from the first ones.
struct RowsOfCase {
    std::uint64_t first = 0;
    bool apart = false;
};
using RowsOfCases = std::unordered_map<std::string, RowsOfCase>;

RowsOfCases rows_of_cases(AuditedBabies const& babies) {
    RowsOfCases cases;
    auto const add = [&](std::string const& id, std::uint64_t line) {
        auto const [known, is_new] = cases.emplace(id, RowsOfCase{line, false});
        if (!is_new) known->second = {std::min(known->second.first, line), true};
    };
    for (auto const& baby : babies.babies) add(baby.id, baby.line);
    for (auto const& refused : babies.refused) {
        if (!refused.id.empty()) add(refused.id, refused.line);
    }
    return cases;
}

/// In the long form no piece of a case whose rows stand apart is a baby: each lacks the others.
void refuse_apart(AuditedBabies& babies) {
    auto const cases = rows_of_cases(babies);
    auto const apart = [&](std::string const& id) {
        auto const found = cases.find(id);
        return found != cases.end() && found->second.apart;
    };
    auto const told = [&](std::string const& id, std::uint64_t line, std::string text) {
        auto message =
            fmt::format("{}; the first stand in line {}", csv_rows_apart(id), cases.at(id).first);
        return RefusedLine{line, "rows-apart", std::move(message), std::move(text), id};
    };
    for (auto& refused : babies.refused) {
        if (apart(refused.id) && refused.line != cases.at(refused.id).first)
            refused = told(refused.id, refused.line, std::move(refused.text));
    }
    for (auto const& baby : babies.babies) {
        if (apart(baby.id) && baby.line != cases.at(baby.id).first)
            babies.refused.push_back(told(baby.id, baby.line, {}));
    }
    std::erase_if(babies.babies, [&](auto const& baby) { return apart(baby.id); });
}

/// What the readers of cases say of a refused line, at its places in the file.
void read_again(RefusedLine const& refused, SourcePtr const& source, AuditedBabies const& babies,
                Ontology const& ontology, Diagnostics& result) {
    Diagnostics told;
    if (babies.form) {
        read_csv_rows(source, *babies.form, {ontology}, told);
    } else if (auto const node = yaml::read_json(source, told)) {
        read_case(*node, ontology, told);
    }
    if (refused.message.empty() && !told.has_errors())
        told.error("bad-csv", {source, 0, 0}, "the rows cannot be read as a case");
    result.append(told);
}

}  // namespace

AuditedBabies read_babies(batch::LineSource& source, CasesPlan const& plan, unsigned jobs,
                          std::atomic<bool> const& stop) {
    auto result = Reading(source, plan, stop).go(std::max(1u, jobs));
    if (result.form && result.form->is_long)
        refuse_apart(result);
    else
        refuse_doubles(result);
    std::stable_sort(result.refused.begin(), result.refused.end(),
                     [](auto const& a, auto const& b) { return a.line < b.line; });
    return result;
}

Diagnostics problems(AuditedBabies const& babies, CasesPlan const& plan, std::string const& name) {
    Diagnostics result;
    for (auto const& refused : babies.refused) {
        auto const number = static_cast<std::uint32_t>(refused.line);
        auto const source = make_source(name, refused.text, number);
        if (!refused.message.empty())
            result.error(refused.code, {source, refused.at, refused.at + refused.size},
                         refused.message);
        if (!refused.text.empty() || refused.message.empty())
            read_again(refused, source, babies, plan.books.ontology(), result);
    }
    return result;
}

}  // namespace asterism::audit
