// SPDX-License-Identifier: MIT
#include <fmt/format.h>
#include <fmt/ranges.h>

#include "render/audit_report.h"

namespace asterism {

namespace {

using namespace audit_words;

class CsvWriter {
public:
    explicit CsvWriter(AuditReport const& report) : r_(report), a_(report.audit) {}

    std::string write() {
        out_ =
            "part,service,by,value,figure,count,total,share,low,high,case,exam,urgency,words\r\n";
        counts_of_babies();
        for (auto const& service : a_.services) add(service);
        for (auto const& strata : a_.strata) add(strata);
        chart("missed", a_.missed_chart);
        chart("not indicated", a_.not_indicated_chart);
        for (auto const& d : a_.missed) add(d, "missed");
        for (auto const& d : a_.not_indicated) add(d, "not indicated");
        for (auto const& line : reading(r_))
            row({"note", "", "", "", "", "", "", "", "", "", "", "", "", line});
        return std::move(out_);
    }

private:
    void row(std::vector<std::string> const& cells) {
        std::vector<std::string> safe;
        for (auto const& cell : cells) safe.push_back(csv_cell(cell));
        out_ += fmt::format("{}\r\n", fmt::join(safe, ","));
    }

    void figure(std::vector<std::string> head, std::string name, std::string count,
                std::string total = {}, std::string share = {}, std::string low = {},
                std::string high = {}) {
        for (auto* cell : {&name, &count, &total, &share, &low, &high})
            head.push_back(std::move(*cell));
        head.resize(14);
        row(head);
    }

    void counts_of_babies() {
        std::vector<std::string> const head{"babies", "", "", ""};
        figure(head, "babies", std::to_string(a_.babies));
        figure(head, "decided", std::to_string(a_.decided));
        figure(head, "without decision", std::to_string(a_.without_decision.size()));
        figure(head, "only among the decisions", std::to_string(a_.without_case.size()));
        figure(head, "refused lines", std::to_string(a_.refused));
    }

    void table(std::vector<std::string> const& head, audit::ServiceTable const& table,
               std::vector<bool> const& shown) {
        for (std::size_t i = 0; i < shown.size(); ++i)
            figure(head,
                   fmt::format("{}, {}", rows(i / 2), i % 2 == 0 ? "referred" : "not referred"),
                   shown[i] ? std::to_string(table.cells[i / 2][i % 2]) : "hidden");
        for (auto const& f : figures(table, shown)) {
            auto const interval = f.share.interval();
            figure(head, std::string(f.id), std::to_string(f.share.count),
                   std::to_string(f.share.total), decimal(f.share.value()), decimal(interval.low),
                   decimal(interval.high));
        }
    }

    void add(audit::ServiceAudit const& service) {
        std::vector<std::string> const head{"service", service.id, "", ""};
        table(head, service.table, service.shown);
        if (!service.complete()) return;
        for (auto const& f : coefficients(service.table)) {
            auto const interval = f.coefficient.interval();
            figure(head, std::string(f.id), "", "", decimal(f.coefficient.value),
                   decimal(interval.low), decimal(interval.high));
        }
        auto const cells = service.table.settled();
        figure(head, "prevalence index", "", "", decimal(audit::prevalence_index(cells)));
        figure(head, "bias index", "", "", decimal(audit::bias_index(cells)));
        if (a_.least == 0) delays_of(service);
    }

    void delays_of(audit::ServiceAudit const& service) {
        for (std::size_t u = service.delays.size(); u-- > 0;) {
            auto const& d = service.delays[u];
            if (d.referred() + d.missed == 0) continue;
            std::vector<std::string> const head{"delay", service.id, "urgency",
                                                std::string(to_text(static_cast<Urgency>(u)))};
            auto const suggested = std::to_string(d.referred() + d.missed);
            figure(head, "in time", std::to_string(d.in_time), suggested);
            figure(head, "late", std::to_string(d.late), suggested);
            figure(head, "undated", std::to_string(d.undated), suggested);
            figure(head, "before the exam", std::to_string(d.before_exam), suggested);
            figure(head, "missed", std::to_string(d.missed), suggested);
        }
    }

    void add(audit::StrataOf const& strata) {
        for (auto const& stratum : strata.strata) {
            for (std::size_t i = 0; i < stratum.services.size(); ++i)
                table({"stratum", a_.services[i].id, strata.column, stratum.value},
                      stratum.services[i], std::vector<bool>(6, stratum.shown[i]));
        }
    }

    void chart(std::string const& what, audit::ControlChart const& chart) {
        for (auto const& p : chart.points)
            figure({"chart", "", "month", p.period}, what, std::to_string(p.count),
                   std::to_string(p.total), decimal(p.share()), decimal(p.low), decimal(p.high));
    }

    void add(audit::Disagreement const& d, std::string const& kind) {
        auto const& baby = r_.babies.babies[d.baby];
        auto const words = fmt::format("{}; found: {}", fmt::join(d.reasons, "; "), d.findings);
        auto const urgency = kind == "missed" ? std::string(to_text(d.urgency)) : std::string();
        row({"disagreement", a_.services[d.service].id, "", "", kind, "", "", "", "", "", baby.id,
             day(baby), urgency, words});
    }

    static std::string decimal(double value) { return fmt::format("{:.6f}", value); }

    AuditReport const& r_;
    audit::Audit const& a_;
    std::string out_;
};

bool is_number(std::string_view text) {
    return !text.empty() && text.find_first_not_of("0123456789.-") == std::string_view::npos &&
           text.find('-', 1) == std::string_view::npos && text != "-";
}

}  // namespace

std::string csv_cell(std::string_view text) {
    // Full-width signs and a line feed start formulas in some spreadsheets too.
    bool const formula =
        !text.empty() && !is_number(text) &&
        (std::string_view("=+-@\t\r\n").find(text.front()) != std::string_view::npos ||
         text.starts_with("\xEF\xBC\x9D") || text.starts_with("\xEF\xBC\x8B") ||
         text.starts_with("\xEF\xBC\x8D") || text.starts_with("\xEF\xBC\xA0"));
    auto cell = (formula ? "'" : "") + std::string(text);
    if (cell.find_first_of(",\"\r\n\t';") == std::string::npos) return cell;
    std::string quoted = "\"";
    for (char const c : cell) {
        if (c == '"') quoted += '"';
        quoted += c == '\0' ? ' ' : c;
    }
    return quoted + '"';
}

std::string audit_csv(AuditReport const& report) { return CsvWriter(report).write(); }

}  // namespace asterism
