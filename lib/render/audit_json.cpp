// SPDX-License-Identifier: MIT
#include <nlohmann/json.hpp>

#include "assess/assess.h"
#include "render/assessment_words.h"
#include "render/audit_report.h"
#include "render/json.h"

namespace asterism {

namespace {

using Json = nlohmann::ordered_json;

Json count_json(audit::ServiceTable const& table, std::vector<bool> const& shown, std::size_t row,
                std::size_t column) {
    if (!shown[row * 2 + column]) return nullptr;
    return table.cells[row][column];
}

Json table_json(audit::ServiceTable const& table, std::vector<bool> const& shown) {
    Json result;
    constexpr char const* names[] = {"suggested", "unsettled", "not_suggested"};
    for (std::size_t row = 0; row < 3; ++row)
        result[names[row]] = {{"referred", count_json(table, shown, row, 0)},
                              {"not_referred", count_json(table, shown, row, 1)}};
    return result;
}

Json share_json(audit::Proportion const& share) {
    auto const interval = share.interval();
    return {{"count", share.count},
            {"total", share.total},
            {"value", share.value()},
            {"low", interval.low},
            {"high", interval.high}};
}

void add_figures(Json& object, audit::ServiceTable const& table, std::vector<bool> const& shown) {
    for (auto const* id : {"sensitivity", "specificity", "ppv", "npv"}) object[id] = nullptr;
    for (auto const& figure : audit_words::figures(table, shown))
        object[std::string(figure.id)] = share_json(figure.share);
}

template <class T>
Json optional_json(std::optional<T> const& value) {
    return value ? Json(*value) : Json();
}

Json agreement_json(audit::ServiceTable const& table) {
    auto const cells = table.settled();
    Json object{{"kappa", nullptr}, {"ac1", nullptr}};
    for (auto const& [id, label, coefficient] : audit_words::coefficients(table)) {
        auto const interval = coefficient.interval();
        object[std::string(id)] = {{"value", coefficient.value},
                                   {"error", coefficient.error},
                                   {"low", interval.low},
                                   {"high", interval.high},
                                   {"words", audit::strength_of_agreement(coefficient.value)}};
    }
    object["largest_kappa"] = optional_json(audit::largest_kappa(cells));
    object["prevalence_index"] = audit::prevalence_index(cells);
    object["bias_index"] = audit::bias_index(cells);
    object["positive_agreement"] = optional_json(audit::positive_agreement(cells));
    object["negative_agreement"] = optional_json(audit::negative_agreement(cells));
    object["notes"] = audit_words::notes(table);
    return object;
}

Json delays_json(audit::ServiceAudit const& service) {
    auto list = Json::array();
    for (std::size_t u = service.delays.size(); u-- > 0;) {
        auto const& d = service.delays[u];
        auto const urgency = static_cast<Urgency>(u);
        if (d.referred() + d.missed == 0) continue;
        list.push_back({{"urgency", to_text(urgency)},
                        {"allowed_days", optional_json(audit::days_allowed(urgency))},
                        {"referred", d.referred()},
                        {"missed", d.missed},
                        {"in_time", d.in_time},
                        {"late", d.late},
                        {"before_exam", d.before_exam},
                        {"undated", d.undated},
                        {"median_days", optional_json(d.median())},
                        {"longest_days", d.days.empty() ? Json() : Json(d.days.back())}});
    }
    return list;
}

Json service_json(audit::ServiceAudit const& service, bool with_delays) {
    Json object{{"service", service.id},
                {"label", service.label},
                {"withheld", service.withheld},
                {"table", table_json(service.table, service.shown)},
                {"undecided", service.undecided}};
    add_figures(object, service.table, service.shown);
    object["agreement"] = service.complete() && service.table.settled().total() > 0
                              ? agreement_json(service.table)
                              : Json();
    object["delays"] = with_delays ? delays_json(service) : Json::array();
    return object;
}

Json strata_json(audit::StrataOf const& strata, AuditReport const& report) {
    Json object{{"by", strata.column}, {"values", Json::array()}};
    for (auto const& stratum : strata.strata) {
        Json value{{"value", stratum.value}, {"services", Json::array()}};
        for (std::size_t i = 0; i < stratum.services.size(); ++i) {
            std::vector<bool> const shown(6, stratum.shown[i]);
            Json one{{"service", report.audit.services[i].id},
                     {"table", table_json(stratum.services[i], shown)}};
            add_figures(one, stratum.services[i], shown);
            value["services"].push_back(std::move(one));
        }
        object["values"].push_back(std::move(value));
    }
    return object;
}

Json list_json(std::vector<audit::Disagreement> const& list, AuditReport const& report,
               bool missed) {
    auto result = Json::array();
    for (auto const& d : list) {
        auto const& baby = report.babies.babies[d.baby];
        auto const& book = report.plan.books.all()[baby.book];
        Json one{{"case", baby.id},
                 {"line", baby.line},
                 {"examined_on", audit_words::day(baby)},
                 {"service", report.audit.services[d.service].id},
                 {"urgency", missed ? Json(to_text(d.urgency)) : Json()},
                 {"rulebook", book.version},
                 {"rules", d.rules},
                 {"reasons", d.reasons},
                 {"findings", d.findings}};
        for (std::size_t i = 0; i < baby.columns.size(); ++i)
            one["columns"][report.plan.columns.named[i]] = baby.columns[i];
        result.push_back(std::move(one));
    }
    return result;
}

Json chart_json(audit::ControlChart const& chart) {
    Json object{{"mean", chart.points.empty() ? Json() : Json(chart.mean)},
                {"points", Json::array()}};
    for (auto const& p : chart.points)
        object["points"].push_back({{"period", p.period},
                                    {"count", p.count},
                                    {"total", p.total},
                                    {"share", p.share()},
                                    {"low", p.low},
                                    {"high", p.high},
                                    {"outside", p.outside()}});
    return object;
}

Json books_json(AuditReport const& report) {
    auto list = Json::array();
    auto const& all = report.plan.books.all();
    for (std::size_t i = 0; i < all.size(); ++i)
        list.push_back({{"id", all[i].id},
                        {"version", all[i].version},
                        {"sha256", all[i].digest},
                        {"effective", to_text(all[i].effective)},
                        {"babies", report.audit.by_book[i]}});
    return list;
}

}  // namespace

Json audit_json(AuditReport const& report) {
    auto const& a = report.audit;
    bool const open = a.least == 0;
    Json document{{"schema", audit_schema},
                  {"engine", engine_version()},
                  {"rulebooks", books_json(report)},
                  {"suppressed_below", open ? Json() : Json(a.least)},
                  {"babies", a.babies},
                  {"decided", a.decided},
                  {"refused", a.refused}};
    document["without_decision"] = {{"count", a.without_decision.size()},
                                    {"cases", open ? Json(a.without_decision) : Json::array()}};
    document["without_case"] = {{"count", a.without_case.size()},
                                {"decisions", a.decisions_without_case},
                                {"cases", open ? Json(a.without_case) : Json::array()}};
    document["services"] = Json::array();
    for (auto const& service : a.services)
        document["services"].push_back(service_json(service, open));
    document["strata"] = Json::array();
    for (auto const& strata : a.strata) document["strata"].push_back(strata_json(strata, report));
    document["charts"] = {{"services", a.charted},
                          {"missed", chart_json(a.missed_chart)},
                          {"not_indicated", chart_json(a.not_indicated_chart)}};
    document["missed"] = {{"count", open ? Json(a.missed_in_all) : Json()},
                          {"listed", list_json(a.missed, report, true)}};
    document["not_indicated"] = {{"count", open ? Json(a.not_indicated_in_all) : Json()},
                                 {"listed", list_json(a.not_indicated, report, false)}};
    document["cautions"] = audit_words::reading(report);
    document["cautions"].push_back(safety_text());
    document["diagnostics"] = Json::array();
    return document;
}

}  // namespace asterism
