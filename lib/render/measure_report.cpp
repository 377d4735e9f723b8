// SPDX-License-Identifier: MIT
#include "render/measure_report.h"

#include <cmath>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "base/number.h"
#include "render/assessment_words.h"
#include "render/escape.h"
#include "render/layout.h"
#include "render/measure_numbers.h"

namespace asterism {

namespace {

using Json = nlohmann::ordered_json;

void add_text(Json& object, char const* key, std::string const& text) {
    if (!text.empty()) object[key] = text;
}

Json result_json(NormResult const& r) {
    Json object{{"norm", r.norm},
                {"label", r.label},
                {"preferred", r.preferred},
                {"z", nullptr},
                {"centile", nullptr}};
    add_band(object, "z", r.z, r.z_with_margin);
    add_band(object, "centile", r.centile, r.centile_with_margin);
    object["note"] = r.note;
    object["population"] = r.population;
    object["evidence"] = r.evidence;
    object["sources"] = r.sources;
    add_text(object, "about", r.about);
    return object;
}

Json report_json(MeasureReport const& report) {
    auto const& m = report.measure;
    Json object{{"measure", m.measure},
                {"label", m.label},
                {"as_written", m.as_written},
                {"value", rounded(m.value)},
                {"unit", m.unit},
                {"value_band", Json::array({rounded(m.value_low), rounded(m.value_high)})},
                {"computed", m.computed},
                {"soft", report.soft}};
    object["results"] = Json::array();
    for (auto const& result : report.results) object["results"].push_back(result_json(result));
    object["without"] = Json::array();
    for (auto const& none : report.without)
        object["without"].push_back({{"norm", none.norm}, {"reason", none.reason}});
    return object;
}

std::string band_words(NumberBand band, std::string_view format) {
    auto const low = fmt::format(fmt::runtime(format), band.low);
    auto const high = fmt::format(fmt::runtime(format), band.high);
    return low == high ? low : fmt::format("{} to {}", low, high);
}

std::string numbers(NormResult const& r) {
    std::vector<std::string> parts;
    if (r.z) parts.push_back("z " + band_words(*r.z, "{:+.2f}"));
    if (r.centile) parts.push_back("centile " + band_words(*r.centile, "{:.1f}"));
    return parts.empty() ? "limits only" : fmt::format("{}", fmt::join(parts, ", "));
}

class ReportText {
public:
    std::string write(MeasureReport const& report) {
        headline(report);
        for (auto const& result : report.results) tell(result);
        if (report.results.empty()) paragraph("No norm applies; judge by eye.", "  ", "  ");
        for (auto const& none : report.without)
            paragraph(fmt::format("{}: no norm, {}", none.norm, none.reason), "  - ", "    ");
        return std::move(out_);
    }

private:
    void paragraph(std::string const& text, std::string_view first, std::string_view rest) {
        out_ += wrapped(terminal_safe(text), first, rest);
    }

    void headline(MeasureReport const& report) {
        auto const& m = report.measure;
        auto text = fmt::format("{}: {}", m.label, m.as_written);
        if (m.value_low != m.value_high) {
            text +=
                fmt::format(" (with the reading error {} to {} {})", to_text(rounded(m.value_low)),
                            to_text(rounded(m.value_high)), m.unit);
        }
        paragraph(text + (m.computed ? ", computed" : ""), "", "  ");
        if (report.soft) paragraph("A soft measure: no referral rests on it alone.", "  ", "  ");
    }

    void tell(NormResult const& r) {
        auto const mark = r.preferred ? " (preferred)" : "";
        paragraph(fmt::format("{}{}: {}", r.norm, mark, numbers(r)), "  - ", "    ");
        if (!r.note.empty()) paragraph(r.note, "    ", "    ");
        paragraph(
            fmt::format("{}; {}; seen as {}", r.population, fmt::join(r.sources, ", "), r.evidence),
            "    ", "    ");
        if (r.preferred && !r.about.empty()) paragraph(r.about, "    ", "    ");
    }

    std::string out_;
};

}  // namespace

std::string measure_report_text(std::vector<MeasureReport> const& reports) {
    std::string text;
    for (auto const& report : reports)
        text += (text.empty() ? "" : "\n") + ReportText().write(report);
    return text + "\n" + wrapped(safety_text(), "", "");
}

Json measure_report_json(std::vector<MeasureReport> const& reports) {
    Json document{{"schema", "asterism.measure/1"}};
    if (!reports.empty()) document.update(report_json(reports.front()));
    if (reports.size() < 2) return document;
    document["measures"] = Json::array();
    for (auto const& report : reports) document["measures"].push_back(report_json(report));
    return document;
}

}  // namespace asterism
