// SPDX-License-Identifier: MIT
#include "render/forecast_report.h"

#include <fmt/format.h>
#include <fmt/ranges.h>
#include <nlohmann/json.hpp>

#include "assess/assess.h"
#include "render/assessment_words.h"
#include "render/audit_report.h"
#include "render/escape.h"
#include "render/json.h"
#include "render/layout.h"

namespace asterism {

namespace {

using Json = nlohmann::ordered_json;

std::string book_line(CompiledRulebook const& book) {
    auto const& header = book.book->header;
    return fmt::format("{} {} ({})", header.id.text, header.version,
                       book.book->digest.substr(0, 8));
}

/// What the figures are, and what they are not.
std::vector<std::string> meaning(ForecastReport const& report) {
    return {fmt::format("From {} simulated newborns (seed {}): findings as frequent as published, "
                        "independent of each other, every step examined, no history. Intervals "
                        "(95 %) tell how exact the simulation is, not how sure the published "
                        "frequencies are.",
                        audit_words::number(report.forecast.samples), report.forecast.seed),
            fmt::format("Of what has no published frequency, minor variants are drawn at {:g} and "
                        "normal variants at {:g} per 10,000, a choice of this project on the high "
                        "side; {} major anomalies and red flags never occur. Comparing two books "
                        "is safer than trusting one figure.",
                        NewbornModel{}.minor_default, NewbornModel{}.normal_default,
                        report.forecast.uncounted.size())};
}

double scaled(double share, ForecastReport const& report) {
    return share * static_cast<double>(report.births);
}

/// `3.42 (3.31 to 3.54)`
std::string per_births(std::uint64_t count, ForecastReport const& report) {
    audit::Proportion const share{count, report.forecast.samples};
    auto const interval = share.interval();
    return fmt::format("{:.2f} ({:.2f} to {:.2f})", scaled(share.value(), report),
                       scaled(interval.low, report), scaled(interval.high, report));
}

std::string line(audit::ServiceForecast const& service, ForecastReport const& report) {
    auto text = fmt::format("{:<32}{:>26}", terminal_safe(service.label),
                            per_births(service.suggested, report));
    if (report.forecast.compared) {
        auto const d =
            audit::paired_difference(service.gained, service.lost, report.forecast.samples);
        text += fmt::format("{:>26}",
                            fmt::format("{:+.2f} ({:+.2f} to {:+.2f})", scaled(d.value, report),
                                        scaled(d.low, report), scaled(d.high, report)));
    }
    text += "\n";
    std::vector<std::string> parts;
    for (std::size_t u = service.by_urgency.size(); u-- > 0;) {
        if (service.by_urgency[u] > 0)
            parts.push_back(fmt::format("{} {:.2f}", to_text(static_cast<Urgency>(u)),
                                        scaled(static_cast<double>(service.by_urgency[u]) /
                                                   static_cast<double>(report.forecast.samples),
                                               report)));
    }
    if (service.unsettled > 0)
        parts.push_back("unsettled " + per_births(service.unsettled, report));
    return parts.empty() ? text : text + fmt::format("    {}\n", fmt::join(parts, ", "));
}

Json rate_json(std::uint64_t count, ForecastReport const& report) {
    audit::Proportion const share{count, report.forecast.samples};
    auto const interval = share.interval();
    return {{"count", count},
            {"per_births", scaled(share.value(), report)},
            {"low", scaled(interval.low, report)},
            {"high", scaled(interval.high, report)}};
}

Json service_json(audit::ServiceForecast const& service, ForecastReport const& report) {
    Json object{{"service", service.id},
                {"label", service.label},
                {"suggested", rate_json(service.suggested, report)},
                {"unsettled", rate_json(service.unsettled, report)},
                {"by_urgency", Json::object()},
                {"before", nullptr},
                {"change", nullptr}};
    for (std::size_t u = service.by_urgency.size(); u-- > 0;)
        object["by_urgency"][std::string(to_text(static_cast<Urgency>(u)))] =
            rate_json(service.by_urgency[u], report);
    if (!report.forecast.compared) return object;
    if (service.before) object["before"] = rate_json(*service.before, report);
    auto const d = audit::paired_difference(service.gained, service.lost, report.forecast.samples);
    object["change"] = {{"gained", service.gained},
                        {"lost", service.lost},
                        {"per_births", scaled(d.value, report)},
                        {"low", scaled(d.low, report)},
                        {"high", scaled(d.high, report)}};
    return object;
}

Json identity(CompiledRulebook const& book) {
    auto const& header = book.book->header;
    return {{"id", header.id.text}, {"version", header.version}, {"sha256", book.book->digest}};
}

std::string csv_row(audit::ServiceForecast const& s, ForecastReport const& report) {
    auto const json = service_json(s, report);
    auto const number = [&](char const* part, char const* key) {
        auto const& value = json[part];
        return value.is_null() ? std::string() : fmt::format("{:.4f}", value[key].get<double>());
    };
    return fmt::format("{},{},{},{},{},{},{},{},{},{}\r\n", csv_cell(s.id), s.suggested,
                       number("suggested", "per_births"), number("suggested", "low"),
                       number("suggested", "high"), number("unsettled", "per_births"),
                       number("before", "per_births"), number("change", "per_births"),
                       number("change", "low"), number("change", "high"));
}

}  // namespace

std::string forecast_text(ForecastReport const& report, bool colour) {
    Style const style(colour);
    auto const& f = report.forecast;
    auto text = style.bold(fmt::format("Suggested referrals per {} births",
                                       audit_words::number(report.births))) +
                "\n";
    text += "  by " + terminal_safe(book_line(report.book));
    if (report.earlier)
        text +=
            fmt::format(", and the change against {}", terminal_safe(book_line(*report.earlier)));
    text += "\n\n" + line(f.any, report) + "\n";
    for (auto const& service : f.services) text += line(service, report);
    text += "\n";
    for (auto const& words : meaning(report)) text += wrapped(words, "", "  ");
    return text + wrapped(safety_text(), "", "  ");
}

Json forecast_json(ForecastReport const& report) {
    auto const& f = report.forecast;
    Json document{{"schema", forecast_schema},
                  {"engine", engine_version()},
                  {"rulebook", identity(report.book)},
                  {"against", report.earlier ? identity(*report.earlier) : Json()},
                  {"births", report.births},
                  {"samples", f.samples},
                  {"seed", f.seed},
                  {"any", service_json(f.any, report)},
                  {"services", Json::array()}};
    for (auto const& service : f.services)
        document["services"].push_back(service_json(service, report));
    document["uncounted"] = f.uncounted;
    document["cautions"] = meaning(report);
    document["cautions"].push_back(safety_text());
    document["diagnostics"] = Json::array();
    return document;
}

std::string forecast_csv(ForecastReport const& report) {
    std::string text =
        "service,babies,suggested,low,high,unsettled,before,change,change_low,change_high\r\n";
    text += csv_row(report.forecast.any, report);
    for (auto const& service : report.forecast.services) text += csv_row(service, report);
    return text;
}

}  // namespace asterism
