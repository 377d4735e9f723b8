// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include "render/assessment_words.h"
#include "render/audit_report.h"
#include "render/escape.h"
#include "render/layout.h"

namespace asterism {

namespace {

using namespace audit_words;

class TextWriter {
public:
    TextWriter(AuditReport const& report, bool colour)
        : r_(report), a_(report.audit), style_(colour) {}

    std::string write() {
        out_ = style_.bold("Audit of referrals") + "\n";
        for (auto const& line : counts(r_)) paragraph(line, "  ");
        for (auto const& line : books(r_)) paragraph(line, "  ");
        for (auto const& service : a_.services) add(service);
        quiet_services();
        for (auto const& strata : a_.strata) add(strata);
        chart("Suggested referrals missed, by month", a_.missed_chart);
        chart("Referrals not indicated, by month", a_.not_indicated_chart);
        list("Missed referrals", a_.missed, a_.missed_in_all);
        list("Referrals not indicated", a_.not_indicated, a_.not_indicated_in_all);
        out_ += "\n";
        for (auto const& line : reading(r_)) paragraph(line, "");
        paragraph(std::string(safety_text()), "");
        return std::move(out_);
    }

private:
    void paragraph(std::string const& text, std::string_view margin) {
        out_ += wrapped(terminal_safe(text), margin, std::string(margin) + "  ");
    }

    void heading(std::string const& text) {
        out_ += "\n" + style_.bold(terminal_safe(text)) + "\n";
    }

    void add(audit::ServiceAudit const& service) {
        if (quiet(service)) return;
        heading(service.label);
        if (service.withheld) return paragraph("withheld: the counts are too small", "  ");
        out_ += fmt::format("  {:<14}{:>12}{:>15}\n", "", "referred", "not referred");
        for (std::size_t row = 0; row < 3; ++row)
            out_ += fmt::format("  {:<14}{:>12}{:>15}\n", rows(row),
                                cell(service.table, service.shown, row, 0),
                                cell(service.table, service.shown, row, 1));
        if (service.undecided > 0)
            paragraph(fmt::format("{} babies without a decision on this service: not counted",
                                  number(service.undecided)),
                      "  ");
        for (auto const& figure : figures(service.table, service.shown))
            out_ += fmt::format("  {:<12} {}\n", figure.id, percent(figure.share));
        if (service.complete()) agreement(service);
        if (a_.least == 0) delays_of(service);
    }

    void agreement(audit::ServiceAudit const& service) {
        for (auto const& figure : coefficients(service.table))
            out_ += fmt::format("  {:<12} {}\n", figure.id, coefficient(figure.coefficient));
        for (auto const& note : notes(service.table)) paragraph(note, "  ");
    }

    void delays_of(audit::ServiceAudit const& service) {
        for (std::size_t u = service.delays.size(); u-- > 0;) {
            auto const& d = service.delays[u];
            auto const urgency = static_cast<Urgency>(u);
            if (d.referred() + d.missed == 0) continue;
            paragraph(fmt::format("{} ({}): {}", to_text(urgency), allowed(urgency), delays(d)),
                      "  ");
        }
    }

    void quiet_services() {
        std::string names;
        for (auto const& service : a_.services) {
            if (quiet(service)) names += (names.empty() ? "" : ", ") + service.label;
        }
        if (!names.empty()) {
            heading("Neither suggested nor referred to");
            paragraph(names, "  ");
        }
    }

    void add(audit::StrataOf const& strata) {
        heading("By " + strata.column);
        for (std::size_t i = 0; i < a_.services.size(); ++i) {
            if (quiet(a_.services[i])) continue;
            out_ += "  " + terminal_safe(a_.services[i].label) + "\n";
            for (auto const& stratum : strata.strata) {
                auto const& table = stratum.services[i];
                auto const words =
                    !stratum.shown[i]
                        ? std::string("withheld")
                        : fmt::format("{} suggested, {} missed; {} referred, {} not indicated",
                                      number(table.agreed() + table.missed()),
                                      number(table.missed()),
                                      number(table.agreed() + table.not_indicated()),
                                      number(table.not_indicated()));
                out_ += fmt::format("    {:<14} {}\n", terminal_safe(stratum.value), words);
            }
        }
    }

    void chart(std::string const& title, audit::ControlChart const& chart) {
        if (chart.points.empty()) return;
        heading(title);
        out_ += fmt::format("  mean {}; limits: three standard errors\n", percent(chart.mean));
        for (auto const& p : chart.points)
            out_ += fmt::format("  {:<10} {:>7} ({} of {}; limits {} to {}){}\n",
                                terminal_safe(p.period), percent(p.share()), number(p.count),
                                number(p.total), percent(p.low), percent(p.high),
                                p.outside() ? "  OUTSIDE" : "");
    }

    void list(std::string const& title, std::vector<audit::Disagreement> const& list,
              std::uint64_t in_all) {
        if (list.empty()) return;
        heading(fmt::format("{}: {}", title, number(in_all)));
        for (auto const& d : list) add(d, title.starts_with("Missed"));
        if (in_all > list.size())
            out_ +=
                fmt::format("  and {} more (--list N shows more)\n", number(in_all - list.size()));
    }

    void add(audit::Disagreement const& d, bool missed) {
        auto const& baby = r_.babies.babies[d.baby];
        auto const head = fmt::format("{}{} - {}, exam {}, line {}",
                                      missed ? fmt::format("{}: ", to_text(d.urgency)) : "",
                                      a_.services[d.service].label, baby.id, day(baby), baby.line);
        paragraph(head, "  ");
        for (auto const& reason : d.reasons)
            paragraph((missed ? "" : "nearest: ") + reason, "    ");
        if (!missed) paragraph("found: " + (d.findings.empty() ? "nothing" : d.findings), "    ");
    }

    AuditReport const& r_;
    audit::Audit const& a_;
    Style style_;
    std::string out_;
};

}  // namespace

std::string audit_text(AuditReport const& report, bool colour) {
    return TextWriter(report, colour).write();
}

}  // namespace asterism
