// SPDX-License-Identifier: MIT
#include "audit/audit.h"

#include <algorithm>
#include <unordered_set>

#include <fmt/format.h>

#include "audit/disagreements.h"
#include "audit/suppress.h"

namespace asterism::audit {

namespace {

std::string month_of(AuditedBaby const& baby) {
    return baby.day.ok() ? to_text(baby.day).substr(0, 7) : std::string();
}

class Counting {
public:
    Counting(AuditedBabies const& babies, CasesPlan const& plan, AuditOptions const& options)
        : babies_(babies), plan_(plan), options_(options), services_(plan.books.services()) {}

    Audit count() {
        audit_.least = options_.least;
        audit_.refused = babies_.refused.size();
        audit_.by_book.assign(plan_.books.all().size(), 0);
        for (std::size_t i = 0; i < services_.size(); ++i)
            audit_.services.push_back(
                {services_.ids()[i], services_.label(i), {}, 0, {}, {}, false});
        for (auto const& baby : babies_.babies) add(baby);
        for (auto& service : audit_.services) {
            for (auto& delays : service.delays) std::sort(delays.days.begin(), delays.days.end());
        }
        unmatched();
        suppress();
        for (auto const& by : options_.by) audit_.strata.push_back(strata(by));
        charts();
        lists();
        return std::move(audit_);
    }

private:
    void add(AuditedBaby const& baby) {
        ++audit_.babies;
        ++audit_.by_book[baby.book];
        if (!baby.decided) return audit_.without_decision.push_back(baby.id);
        ++audit_.decided;
        for (std::size_t i = 0; i < baby.services.size(); ++i) add(baby.services[i], i);
    }

    void add(JudgedService const& judged, std::size_t at) {
        auto& service = audit_.services[at];
        if (judged.decision == Decision::unknown || !judged.in_book) {
            ++service.undecided;
            return;
        }
        service.table.add(judged);
        if (judged.verdict != Verdict::suggested) return;
        auto& delays = service.delays[static_cast<std::size_t>(judged.urgency)];
        if (judged.missed()) {
            ++delays.missed;
        } else if (judged.days == JudgedService::no_days) {
            ++delays.undated;
        } else if (judged.days < 0) {
            ++delays.before_exam;
        } else {
            auto const allowed = days_allowed(judged.urgency);
            ++(allowed && judged.days > *allowed ? delays.late : delays.in_time);
            delays.days.push_back(judged.days);
        }
    }

    /// Decisions for which there is no case.
    void unmatched() {
        if (!plan_.decisions) return;
        std::unordered_set<std::string_view> cases;
        cases.reserve(babies_.babies.size());
        for (auto const& baby : babies_.babies) cases.insert(baby.id);
        for (auto const& [id, decisions] : plan_.decisions->all()) {
            if (cases.count(id) > 0) continue;
            audit_.without_case.push_back(id);
            audit_.decisions_without_case +=
                decisions.services.size() + (decisions.complete ? 1 : 0);
        }
        std::sort(audit_.without_case.begin(), audit_.without_case.end());
    }

    void suppress() {
        for (auto& service : audit_.services) {
            auto const cells = service.table.list();
            service.shown.assign(cells.size(), true);
            if (options_.least == 0) continue;
            auto const shown = shown_cells(cells, options_.least);
            service.shown = shown.shown;
            service.withheld = shown.withheld;
        }
    }

    StrataOf strata(std::string const& by) const {
        auto const& named = plan_.columns.named;
        auto const at =
            static_cast<std::size_t>(std::find(named.begin(), named.end(), by) - named.begin());
        std::map<std::string, Stratum> found;
        for (auto const& baby : babies_.babies) {
            if (!baby.decided) continue;
            auto const value = by == "month" ? month_of(baby) : baby.columns[at];
            auto& stratum = found[value];
            stratum.services.resize(services_.size());
            for (std::size_t i = 0; i < services_.size(); ++i) {
                auto const& judged = baby.services[i];
                if (judged.in_book && judged.decision != Decision::unknown)
                    stratum.services[i].add(judged);
            }
        }
        StrataOf result{by, {}};
        for (auto& [value, stratum] : found) {
            stratum.value = value.empty() ? "not given" : value;
            result.strata.push_back(std::move(stratum));
        }
        suppress(result);
        return result;
    }

    void suppress(StrataOf& strata) const {
        for (auto& stratum : strata.strata) stratum.shown.assign(services_.size(), true);
        for (std::size_t i = 0; i < services_.size() && options_.least > 0; ++i) {
            std::vector<std::vector<std::uint64_t>> tables;
            for (auto const& stratum : strata.strata) tables.push_back(stratum.services[i].list());
            auto const shown = shown_strata(tables, options_.least);
            for (std::size_t k = 0; k < tables.size(); ++k)
                strata.strata[k].shown[i] = audit_.services[i].complete() && shown[k];
        }
    }

    /// Suppressed charts are drawn from months that may be shown alone: they add nothing.
    void charts() {
        auto const months = strata("month");
        std::vector<std::size_t> drawn;
        for (std::size_t i = 0; i < services_.size(); ++i) {
            bool const all = std::all_of(months.strata.begin(), months.strata.end(),
                                         [&](auto const& month) { return month.shown[i]; });
            if (all && audit_.services[i].table.total() > 0) drawn.push_back(i);
        }
        std::vector<ChartPoint> missed, not_indicated;
        for (auto const& month : months.strata) {
            ChartPoint miss{month.value, 0, 0, 0, 1}, over = miss;
            for (auto const i : drawn) {
                auto const& table = month.services[i];
                miss.count += table.missed();
                miss.total += table.missed() + table.agreed();
                over.count += table.not_indicated();
                over.total += table.not_indicated() + table.agreed();
            }
            missed.push_back(miss);
            not_indicated.push_back(over);
        }
        for (auto const i : drawn) audit_.charted.push_back(services_.ids()[i]);
        audit_.missed_chart = control_chart(std::move(missed));
        audit_.not_indicated_chart = control_chart(std::move(not_indicated));
    }

    void lists() {
        for (auto const& service : audit_.services) {
            audit_.missed_in_all += service.table.missed();
            audit_.not_indicated_in_all += service.table.not_indicated();
        }
        // Lists speak of single babies: they are what suppression is there to prevent.
        if (options_.least > 0) return;
        audit_.missed = missed_referrals(babies_, options_.listed);
        audit_.not_indicated = not_indicated_referrals(babies_, options_.listed);
        explain(babies_, plan_, audit_.missed);
        explain(babies_, plan_, audit_.not_indicated);
    }

    AuditedBabies const& babies_;
    CasesPlan const& plan_;
    AuditOptions const& options_;
    Services const& services_;
    Audit audit_;
};

}  // namespace

void ServiceTable::add(JudgedService const& judged) {
    auto const row = judged.verdict == Verdict::suggested   ? suggested
                     : judged.verdict == Verdict::unsettled ? unsettled
                                                            : not_suggested;
    ++cells[row][judged.decision == Decision::referred ? referred : not_referred];
}

std::vector<std::uint64_t> ServiceTable::list() const {
    std::vector<std::uint64_t> result;
    for (auto const& row : cells) result.insert(result.end(), row.begin(), row.end());
    return result;
}

std::uint64_t ServiceTable::total() const {
    std::uint64_t sum = 0;
    for (auto const count : list()) sum += count;
    return sum;
}

std::optional<double> Delays::median() const {
    if (days.empty()) return std::nullopt;
    auto const half = days.size() / 2;
    return days.size() % 2 == 1 ? days[half] : (days[half - 1] + days[half]) / 2.0;
}

std::optional<int> days_allowed(Urgency urgency) {
    constexpr int two_weeks = 14;
    if (urgency == Urgency::routine) return std::nullopt;
    return urgency == Urgency::urgent ? two_weeks : 0;
}

bool ServiceAudit::complete() const {
    return !withheld && std::all_of(shown.begin(), shown.end(), [](bool s) { return s; });
}

Audit audit(AuditedBabies const& babies, CasesPlan const& plan, AuditOptions const& options) {
    return Counting(babies, plan, options).count();
}

}  // namespace asterism::audit
