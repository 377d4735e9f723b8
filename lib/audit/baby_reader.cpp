// SPDX-License-Identifier: MIT
#include "audit/baby_reader.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/nearest.h"
#include "cases/read_case.h"
#include "yaml/read.h"

namespace asterism::audit {

namespace {

bool blank(std::string_view line) {
    return line.find_first_not_of(" \t\r") == std::string_view::npos;
}

std::int32_t days_between(Date from, Date to) {
    auto const days = std::chrono::sys_days(to) - std::chrono::sys_days(from);
    return static_cast<std::int32_t>(days.count());
}

}  // namespace

BabyReader::BabyReader(CasesPlan const& plan)
    : plan_(plan), reader_(plan.books.ontology()), waiting_(plan.books.all().size()) {}

BlockBabies BabyReader::read(batch::Block& block) {
    BlockBabies result;
    out_ = &result;
    result.counts_lines = block.counts_lines;
    result.lines = block.counts_lines ? block.problems.size() : 0;
    result.form = block.form;
    for (auto const& problem : block.problems)
        result.refused.push_back(
            {problem.line, problem.code, problem.message, problem.rows, problem.id});
    std::size_t begin = 0;
    for (std::size_t index = 0; begin < block.size; ++index) {
        auto const end = std::min(block.buffer.find('\n', begin), block.size);
        auto const number = block.counts_lines ? ++result.lines : block.numbers[index];
        if (!block.rows.empty()) written_ = block.rows[index];
        line(block.buffer.data() + begin, end - begin, number);
        begin = end + 1;
    }
    judge_waiting();
    keep_lines();
    return result;
}

/// `about`: a part of the line, or a text that stands in it.
bool BabyReader::refuse(std::string_view code, std::string message, std::string_view about) {
    auto const text = out_->form ? written_ : line_;
    RefusedLine refused{number_, std::string(code), std::move(message), std::string(text), id_};
    auto const begin = std::uintptr_t(text.data()), part = std::uintptr_t(about.data());
    bool const inside = part >= begin && part < begin + text.size();
    auto const at = inside ? part - begin : about.empty() ? text.npos : text.find(about);
    if (at != text.npos) {
        refused.at = static_cast<std::uint32_t>(at);
        refused.size = static_cast<std::uint32_t>(about.size());
    }
    out_->refused.push_back(std::move(refused));
    return false;
}

void BabyReader::line(char* text, std::size_t size, std::uint64_t number) {
    number_ = number;
    line_ = {text, size};
    if (line_.ends_with('\r')) line_.remove_suffix(1);
    id_.clear();
    if (blank(line_)) return;
    AuditedBaby baby;
    Parts parts;
    baby.line = number;
    if (!cut(text, line_, baby, parts) || !set_day(baby, parts.day)) return;
    auto const* const ready = plan_.books.ready(baby.book);
    if (!ready) return;
    baby.services.resize(plan_.books.services().size());
    auto& waiting = waiting_[baby.book];
    if (!waiting) waiting.emplace(*ready);
    bool const plain = read_plain(line_, *waiting);
    if ((!plain && !judge_in_full(line_, *ready, baby)) || !decide(baby, parts)) return;
    if (plain) waiting->babies.push_back(out_->babies.size());
    lines_.push_back(line_);
    out_->babies.push_back(std::move(baby));
}

/// Keeps the lines of babies of whom book and decision disagree.
void BabyReader::keep_lines() {
    for (std::size_t i = 0; i < lines_.size(); ++i) {
        auto& baby = out_->babies[i];
        bool const disagrees =
            std::any_of(baby.services.begin(), baby.services.end(),
                        [](auto const& s) { return s.missed() || s.not_indicated(); });
        if (disagrees) baby.text = lines_[i];
    }
    lines_.clear();
}

/// Takes what the audit wants from a line and blanks out what the readers of cases do not know.
bool BabyReader::cut(char* text, std::string_view line, AuditedBaby& baby, Parts& parts) {
    // A line that cannot be cut is broken: the readers say how.
    if (!split_line(line, members_)) return refuse("", "");
    parts.columns.assign(plan_.columns.named.size(), {});
    removed_.assign(members_.size(), false);
    bool fine = true;
    std::string_view odd;
    std::string message;
    for (std::size_t i = 0; i < members_.size(); ++i) {
        auto const& member = members_[i];
        if (member.key == "case") fine = plain_text(member, baby.id) && fine;
        if (member.key == "examined-on") fine = plain_text(member, parts.day) && fine;
        if (member.key == "decisions") parts.decisions = member.value;
        removed_[i] = plan_.columns.has(member.key);
        if (!removed_[i] || column(member, parts)) continue;
        odd = member.value;
        message = fmt::format("expected a text or a number under `{}`, found `{}`", member.key,
                              member.value);
    }
    blank_out(text, members_, removed_);
    id_ = fine ? baby.id : std::string();
    if (!odd.empty()) return refuse("bad-value", std::move(message), odd);
    if (!fine) return refuse("", "");
    if (baby.id.empty()) return refuse("missing-case", "a case without a name cannot be audited");
    baby.columns = std::move(parts.columns);
    return true;
}

/// False when a column that is wanted holds no text.
bool BabyReader::column(LineMember const& member, Parts& parts) const {
    auto const& named = plan_.columns.named;
    auto const at = std::find(named.begin(), named.end(), member.key);
    return at == named.end() ||
           plain_text(member, parts.columns[static_cast<std::size_t>(at - named.begin())]);
}

bool BabyReader::set_day(AuditedBaby& baby, std::string const& text) {
    if (text.empty() && !plan_.day_needed) return true;
    if (text.empty())
        return refuse("missing-exam-day",
                      fmt::format("case `{}` has no `examined-on`, so nobody knows which book was "
                                  "in force; --as-of DATE judges all cases by one book",
                                  baby.id));
    if (text != last_day_) {
        auto const date = parse_date(text);
        if (!date) return refuse("", "");
        last_day_ = text;
        day_ = *date;
        day_book_ = plan_.books.in_force(day_);
    }
    if (!day_book_)
        return refuse("no-book-in-force",
                      fmt::format("no book was in force on {}, the exam day of case `{}`; the "
                                  "first is in force from {}",
                                  text, baby.id, to_text(plan_.books.all().front().effective)),
                      text);
    baby.day = day_;
    baby.book = *day_book_;
    return true;
}

/// Reads a line for the fast judge; false when only the full readers can tell what it says.
bool BabyReader::read_plain(std::string_view line, Waiting& waiting) {
    if (waiting.cases.size() == waiting.babies.size())
        waiting.cases.emplace_back().steps = batch::StepSet(plan_.books.ontology().steps.size());
    return reader_.read(line, waiting.cases[waiting.babies.size()]);
}

bool BabyReader::judge_in_full(std::string_view line, ReadyBook const& ready, AuditedBaby& baby) {
    Diagnostics diagnostics;
    auto const node = yaml::read_json(make_source("", std::string(line)), diagnostics);
    auto const& ontology = plan_.books.ontology();
    auto const whole = node ? read_case(*node, ontology, diagnostics) : empty_case(ontology);
    if (diagnostics.has_errors() || !node) return refuse("", "");
    join(baby, batch::engine_answers(*ready.book, whole));
    return true;
}

void BabyReader::judge_waiting() {
    for (auto& waiting : waiting_) {
        if (!waiting || waiting->babies.empty()) continue;
        auto const cases = std::span(waiting->cases).first(waiting->babies.size());
        auto const answers = waiting->judge.judge(cases);
        for (std::size_t i = 0; i < answers.size(); ++i)
            join(out_->babies[waiting->babies[i]], answers[i]);
        waiting->babies.clear();
    }
}

void BabyReader::join(AuditedBaby& baby, batch::Answers const& answers) const {
    auto const& place = plan_.books.ready(baby.book)->service_at;
    for (std::size_t i = 0; i < answers.size(); ++i) {
        auto& service = baby.services[place[i]];
        service.in_book = true;
        service.verdict = answers[i].verdict;
        service.urgency = answers[i].urgency.value_or(Urgency::routine);
    }
}

bool BabyReader::decide(AuditedBaby& baby, Parts const& parts) {
    if (!plan_.decisions) return parts.decisions.empty() || own_decisions(parts.decisions, baby);
    if (!parts.decisions.empty())
        return refuse("two-decisions", fmt::format("case `{}` carries decisions of its own, and "
                                                   "--decisions names a file; give one of them",
                                                   baby.id));
    static CaseDecisions const nothing;
    auto const* const found = plan_.decisions->find(baby.id);
    if (found || plan_.unlisted_not_referred) apply(found ? *found : nothing, baby);
    return true;
}

/// `decisions: { referred: [...], on: DATE }` names every service the baby was referred to.
bool BabyReader::own_decisions(std::string const& text, AuditedBaby& baby) {
    Diagnostics unread;  // the readers of cases accepted it
    auto const node = yaml::read_json(make_source("", text), unread);
    auto const* const list = node ? node->find("referred") : nullptr;
    auto const* const on = node ? node->find("on") : nullptr;
    if (!list) return true;
    CaseDecisions decisions;
    decisions.complete = true;
    auto const day = on ? parse_date(on->text) : Parsed<Date>(tl::unexpect, "");
    auto const& services = plan_.books.services();
    for (auto const& item : list->items) {
        auto const found = services.find(item.text);
        if (!found) {
            auto const help = did_you_mean(item.text, services.ids());
            return refuse(
                "unknown-service",
                fmt::format("unknown service `{}`{}{}", item.text, help.empty() ? "" : "; ", help),
                item.text);
        }
        decisions.services.push_back({*found, true, day ? std::optional(*day) : std::nullopt});
    }
    apply(decisions, baby);
    return true;
}

void BabyReader::apply(CaseDecisions const& decisions, AuditedBaby& baby) const {
    baby.decided = true;
    if (decisions.complete || plan_.unlisted_not_referred) {
        for (auto& service : baby.services) service.decision = Decision::not_referred;
    }
    for (auto const& decided : decisions.services) {
        auto& service = baby.services[decided.service];
        service.decision = decided.referred ? Decision::referred : Decision::not_referred;
        if (decided.referred && decided.on && baby.day.ok())
            service.days = days_between(baby.day, *decided.on);
    }
}

}  // namespace asterism::audit
