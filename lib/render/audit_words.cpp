// SPDX-License-Identifier: MIT
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "render/assessment_words.h"
#include "render/audit_report.h"

namespace asterism::audit_words {

namespace {

using audit::ServiceTable;

/// From here on rarity or one-sidedness is spoken of; a choice of this project.
constexpr double strong_prevalence = 0.5, strong_bias = 0.1;

std::size_t place(std::size_t row, std::size_t column) { return row * 2 + column; }

}  // namespace

std::string number(std::uint64_t count) {
    auto digits = std::to_string(count);
    for (auto at = static_cast<std::ptrdiff_t>(digits.size()) - 3; at > 0; at -= 3)
        digits.insert(static_cast<std::size_t>(at), ",");
    return digits;
}

std::vector<Figure> figures(ServiceTable const& table, std::vector<bool> const& shown) {
    using Row = ServiceTable::Row;
    using Column = ServiceTable::Column;
    bool const agreed = shown[place(Row::suggested, Column::referred)];
    bool const missed = shown[place(Row::suggested, Column::not_referred)];
    bool const over = shown[place(Row::not_suggested, Column::referred)];
    bool const rightly = shown[place(Row::not_suggested, Column::not_referred)];
    std::vector<Figure> result;
    auto const add = [&](bool all, Figure const& figure) {
        if (all && figure.share.known()) result.push_back(figure);
    };
    add(agreed && missed, {"sensitivity", "of the suggested, referred", table.sensitivity()});
    add(rightly && over,
        {"specificity", "of the not suggested, not referred", table.specificity()});
    add(agreed && over, {"ppv", "of the referred, suggested", table.positive_value()});
    add(rightly && missed, {"npv", "of the not referred, not suggested", table.negative_value()});
    return result;
}

std::vector<AgreementFigure> coefficients(ServiceTable const& table) {
    std::vector<AgreementFigure> result;
    auto const square = table.settled().table();
    if (auto const kappa = audit::cohen_kappa(square))
        result.push_back({"kappa", "Cohen's kappa", *kappa});
    if (auto const ac1 = audit::gwet_ac1(square)) result.push_back({"ac1", "Gwet's AC1", *ac1});
    return result;
}

std::string cell(ServiceTable const& table, std::vector<bool> const& shown, std::size_t row,
                 std::size_t column) {
    return shown[place(row, column)] ? number(table.cells[row][column]) : "hidden";
}

std::string percent(double share) { return fmt::format("{:.1f} %", share * 100); }

std::string percent(audit::Proportion const& share) {
    auto const interval = share.interval();
    return fmt::format("{:.1f} % ({:.1f} to {:.1f}; {} of {})", share.value() * 100,
                       interval.low * 100, interval.high * 100, number(share.count),
                       number(share.total));
}

std::string coefficient(audit::Coefficient const& value) {
    auto const interval = value.interval();
    auto const plain = [](double x) { return fmt::format("{:.2f}", std::abs(x) < 0.005 ? 0 : x); };
    return fmt::format("{} ({} to {}), {}", plain(value.value), plain(interval.low),
                       plain(interval.high), audit::strength_of_agreement(value.value));
}

std::vector<std::string> notes(ServiceTable const& table) {
    std::vector<std::string> result;
    auto const cells = table.settled();
    if (cells.total() == 0) return result;
    auto const prevalence = audit::prevalence_index(cells);
    auto const bias = audit::bias_index(cells);
    auto const yes = audit::positive_agreement(cells), no = audit::negative_agreement(cells);
    if (prevalence >= strong_prevalence) {
        result.push_back(fmt::format(
            "prevalence index {:.2f}: one answer is far commoner than the other, which lowers "
            "kappa; read it beside AC1 and the agreement on yes{}",
            prevalence, yes ? fmt::format(" ({:.2f})", *yes) : ""));
    }
    if (bias >= strong_bias) {
        result.push_back(
            fmt::format("bias index {:.2f}: clinicians refer {} than the book suggests", bias,
                        cells.second_only > cells.first_only ? "more often" : "less often"));
    }
    if (yes && no && prevalence < strong_prevalence)
        result.push_back(fmt::format("agreement on yes {:.2f}, on no {:.2f}", *yes, *no));
    return result;
}

bool quiet(audit::ServiceAudit const& service) {
    auto const& table = service.table;
    return service.complete() && table.total() == table.rightly_not();
}

std::string allowed(Urgency urgency) {
    auto const days = audit::days_allowed(urgency);
    if (!days) return "no limit";
    return *days == 0 ? "on the day of the exam" : fmt::format("within {} days", *days);
}

std::string delays(audit::Delays const& d) {
    auto text = fmt::format("{} suggested, {} referred", number(d.referred() + d.missed),
                            number(d.referred()));
    if (!d.days.empty())
        text += fmt::format(": {} in time, {} late", number(d.in_time), number(d.late));
    if (d.before_exam > 0) text += fmt::format(", {} dated before the exam", number(d.before_exam));
    if (d.undated > 0) text += fmt::format(", {} undated", number(d.undated));
    if (auto const median = d.median())
        text += fmt::format("; median {:g} days, longest {}", *median, d.days.back());
    return text;
}

std::vector<std::string> counts(AuditReport const& report) {
    auto const& a = report.audit;
    std::vector<std::string> lines{
        fmt::format("{} babies, {} with decisions", number(a.babies), number(a.decided))};
    if (auto const silent = a.without_decision.size(); silent > 0)
        lines.push_back(fmt::format("{} {} without any decision: not counted", number(silent),
                                    silent == 1 ? "baby" : "babies"));
    if (!a.without_case.empty())
        lines.push_back(fmt::format("{} only among the decisions ({}): not counted",
                                    counted(a.without_case.size(), "case", "cases"),
                                    counted(a.decisions_without_case, "decision", "decisions")));
    if (a.refused > 0)
        lines.push_back(fmt::format("{} no usable case: not counted",
                                    counted(a.refused, "line is", "lines are")));
    return lines;
}

std::vector<std::string> books(AuditReport const& report) {
    std::vector<std::string> lines;
    auto const& all = report.plan.books.all();
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (report.audit.by_book[i] == 0) continue;
        lines.push_back(fmt::format("{} {} ({}), in force from {}: {} babies", all[i].id,
                                    all[i].version, all[i].digest.substr(0, 8),
                                    to_text(all[i].effective), number(report.audit.by_book[i])));
    }
    return lines;
}

std::vector<std::string> reading(AuditReport const& report) {
    std::vector<std::string> lines{
        "The book is the reference, the clinician's decision is what is measured. Where they "
        "differ, either may be right: a missed or not indicated referral is a question, not a "
        "fault.",
        "What the book leaves unsettled, because too little of the baby was recorded, is kept "
        "apart and enters no figure. Intervals are 95 %."};
    if (report.audit.least > 0) {
        lines.push_back(fmt::format(
            "Counts below {} are hidden, and so is as much besides as would give them away; "
            "figures that rest on a hidden count, single babies and delays are left out.",
            report.audit.least));
    }
    return lines;
}

std::string day(audit::AuditedBaby const& baby) {
    return baby.day.ok() ? to_text(baby.day) : std::string();
}

std::string_view rows(std::size_t row) {
    static constexpr std::array<std::string_view, 3> words{"suggested", "unsettled",
                                                           "not suggested"};
    return words[row];
}

}  // namespace asterism::audit_words
