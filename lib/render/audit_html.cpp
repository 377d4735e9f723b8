// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include "render/assessment_html.h"
#include "render/assessment_words.h"
#include "render/audit_plots.h"
#include "render/audit_report.h"
#include "render/html.h"

namespace asterism {

namespace {

using namespace audit_words;

class HtmlWriter {
public:
    explicit HtmlWriter(AuditReport const& report) : r_(report), a_(report.audit) {}

    std::string write() {
        header();
        m_.open("main").new_line();
        overview();
        charts();
        services();
        for (auto const& strata : a_.strata) add(strata);
        list("missed", "Missed referrals", a_.missed, a_.missed_in_all);
        list("not-indicated", "Referrals not indicated", a_.not_indicated, a_.not_indicated_in_all);
        m_.close().new_line();
        m_.open("footer");
        for (auto const& line : books(r_)) m_.element("p", line).new_line();
        m_.element("p", safety_text());
        return m_.take();
    }

private:
    void header() {
        Scope const header(m_, "header");
        m_.element("p", "Asterism: audit of referrals", {{"class", "kicker"}});
        auto const head =
            a_.least > 0 ? fmt::format("{} babies", number(a_.decided))
                         : fmt::format("{} babies: {} missed, {} not indicated", number(a_.decided),
                                       number(a_.missed_in_all), number(a_.not_indicated_in_all));
        m_.element("h1", head).new_line();
        for (auto const& line : counts(r_)) m_.element("p", line).new_line();
        for (auto const& line : reading(r_)) m_.element("p", line, {{"class", "note"}}).new_line();
    }

    void heading(std::string const& id, std::string const& words) {
        m_.element("h2", words, {{"id", id}}).new_line();
    }

    void overview() {
        auto const sensitivity = forest_lines("sensitivity");
        auto const ppv = forest_lines("ppv");
        if (sensitivity.empty() && ppv.empty()) return;
        Scope const section(m_, "section", {{"aria-labelledby", "overview"}});
        heading("overview", "Services side by side");
        Scope const plots(m_, "div", {{"class", "plots"}});
        forest(sensitivity, "Of the suggested referrals, made");
        forest(ppv, "Of the referrals made, suggested");
    }

    std::vector<ForestLine> forest_lines(std::string_view id) const {
        std::vector<ForestLine> lines;
        for (auto const& service : a_.services) {
            for (auto const& f : figures(service.table, service.shown)) {
                if (f.id != id) continue;
                lines.push_back(
                    {service.label,
                     fmt::format("{} of {}", number(f.share.count), number(f.share.total)),
                     f.share.value(), f.share.interval()});
            }
        }
        return lines;
    }

    void forest(std::vector<ForestLine> const& lines, std::string const& caption) {
        if (lines.empty()) return;
        Scope const figure(m_, "figure");
        m_.element("figcaption", caption + ", with 95 % intervals").new_line();
        forest_plot(m_, caption + "; the figures stand below, service by service", lines);
    }

    void charts() {
        if (a_.missed_chart.points.empty() && a_.not_indicated_chart.points.empty()) return;
        Scope const section(m_, "section", {{"aria-labelledby", "course"}});
        heading("course", "Month by month");
        Scope const plots(m_, "div", {{"class", "plots"}});
        chart("Of the suggested referrals, missed", a_.missed_chart);
        chart("Of the referrals made, not indicated", a_.not_indicated_chart);
    }

    void chart(std::string const& caption, audit::ControlChart const& chart) {
        if (chart.points.empty()) return;
        Scope const figure(m_, "figure");
        m_.element("figcaption",
                   fmt::format("{}: mean {}; dashed: limits three standard errors from it; a "
                               "diamond lies outside",
                               caption, percent(chart.mean)));
        m_.new_line();
        chart_plot(m_, caption + " by month; the figures stand below the picture", chart);
        Scope const details(m_, "details");
        m_.element("summary", "Figures").new_line();
        Scope const table(m_, "table");
        row("th", {"month", "of", "share", "limits"});
        for (auto const& p : chart.points)
            row("td", {p.period, fmt::format("{} of {}", number(p.count), number(p.total)),
                       percent(p.share()) + (p.outside() ? " (outside)" : ""),
                       fmt::format("{} to {}", percent(p.low), percent(p.high))});
    }

    /// The first cell is a heading of its row.
    void row(std::string_view tag, std::vector<std::string> const& cells) {
        Scope const row(m_, "tr");
        for (std::size_t i = 0; i < cells.size(); ++i) {
            bool const head = i == 0 || tag == "th";
            Attributes attributes;
            if (head) attributes.push_back({"scope", tag == "th" ? "col" : "row"});
            if (i > 0) attributes.push_back({"class", "n"});
            m_.element(head ? "th" : "td", cells[i], attributes);
        }
    }

    void services() {
        Scope const section(m_, "section", {{"aria-labelledby", "services"}});
        heading("services", "Service by service");
        std::string quiet_ones;
        for (auto const& service : a_.services) {
            if (quiet(service))
                quiet_ones += (quiet_ones.empty() ? "" : ", ") + service.label;
            else
                add(service);
        }
        if (!quiet_ones.empty())
            m_.element("p", "Neither suggested nor referred to: " + quiet_ones + ".").new_line();
    }

    void add(audit::ServiceAudit const& service) {
        Scope const article(m_, "article", {{"class", "group"}});
        m_.element("h3", service.label).new_line();
        if (service.withheld) {
            m_.element("p", "Withheld: the counts are too small.");
            return;
        }
        four(service);
        Scope const list(m_, "ul", {{"class", "figures"}});
        for (auto const& f : figures(service.table, service.shown))
            item(std::string(f.id), fmt::format("{}: {}", percent(f.share), f.label));
        if (!service.complete()) return;
        for (auto const& f : coefficients(service.table))
            item(std::string(f.label), coefficient(f.coefficient));
        for (auto const& note : notes(service.table))
            m_.element("li", note, {{"class", "note"}}).new_line();
        if (a_.least == 0) delays_of(service);
        if (service.undecided > 0)
            item("not counted", number(service.undecided) + " babies without a decision on it");
    }

    void item(std::string const& name, std::string const& words) {
        Scope const li(m_, "li");
        m_.element("strong", name).text(" " + words);
    }

    void four(audit::ServiceAudit const& service) {
        Scope const table(m_, "table", {{"class", "four"}});
        row("th", {"the book", "referred", "not referred"});
        for (std::size_t i = 0; i < 3; ++i)
            row("td", {std::string(rows(i)), cell(service.table, service.shown, i, 0),
                       cell(service.table, service.shown, i, 1)});
    }

    void delays_of(audit::ServiceAudit const& service) {
        for (std::size_t u = service.delays.size(); u-- > 0;) {
            auto const& d = service.delays[u];
            auto const urgency = static_cast<Urgency>(u);
            if (d.referred() + d.missed == 0) continue;
            item(std::string(to_text(urgency)),
                 fmt::format("({}): {}", allowed(urgency), delays(d)));
        }
    }

    void add(audit::StrataOf const& strata) {
        auto const id = "by-" + strata.column;
        Scope const section(m_, "section");
        m_.element("h2", "By " + strata.column).new_line();
        for (std::size_t i = 0; i < a_.services.size(); ++i) {
            if (quiet(a_.services[i])) continue;
            Scope const scroll(m_, "div",
                               {{"class", "scroll"},
                                {"tabindex", "0"},
                                {"role", "region"},
                                {"aria-label", a_.services[i].label + ", " + id}});
            Scope const table(m_, "table");
            m_.element("caption", a_.services[i].label).new_line();
            row("th", {strata.column, "suggested", "missed", "referred", "not indicated"});
            for (auto const& stratum : strata.strata) {
                auto const& t = stratum.services[i];
                if (!stratum.shown[i])
                    row("td", {stratum.value, "withheld", "", "", ""});
                else
                    row("td", {stratum.value, number(t.agreed() + t.missed()), number(t.missed()),
                               number(t.agreed() + t.not_indicated()), number(t.not_indicated())});
            }
        }
    }

    void list(std::string const& id, std::string const& title,
              std::vector<audit::Disagreement> const& list, std::uint64_t in_all) {
        if (list.empty()) return;
        Scope const section(m_, "section", {{"aria-labelledby", id}});
        heading(id, fmt::format("{}: {}", title, number(in_all)));
        for (auto const& d : list) add(d, id == "missed");
        if (in_all > list.size())
            m_.element("p", fmt::format("and {} more", number(in_all - list.size())));
    }

    void add(audit::Disagreement const& d, bool missed) {
        auto const& baby = r_.babies.babies[d.baby];
        auto const urgency = missed ? std::string(to_text(d.urgency)) : std::string();
        Scope const article(m_, "article", {{"class", "item " + urgency}});
        m_.open("p").element("strong", a_.services[d.service].label);
        if (missed) m_.text(" ").element("span", urgency, {{"class", "badge " + urgency}});
        m_.text(fmt::format(": {}, exam {}, line {}", baby.id, day(baby), baby.line));
        m_.close().new_line();
        for (auto const& reason : d.reasons)
            m_.element("p", (missed ? "" : "Nearest: ") + reason).new_line();
        if (!missed)
            m_.element("p", "Found: " + (d.findings.empty() ? "nothing" : d.findings),
                       {{"class", "note"}});
    }

    AuditReport const& r_;
    audit::Audit const& a_;
    Markup m_;
};

}  // namespace

std::string audit_html(AuditReport const& report) {
    return html_page({"Audit of referrals",
                      assessment_html_style() + std::string(audit_plot_style()),
                      HtmlWriter(report).write()});
}

}  // namespace asterism
