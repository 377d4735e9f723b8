// SPDX-License-Identifier: MIT
#include "render/assessment_words.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/fold.h"

namespace asterism {

namespace {

bool is_part_of_a_tally(Evidence const& e) { return e.id.find('/') != std::string::npos; }

std::string with_details(std::string text, Evidence const& e) {
    if (!e.side.empty()) text += e.side == "both" ? ", both sides" : ", " + e.side;
    if (!e.grade.empty()) text += ", " + e.grade;
    if (e.familial) text += ", familial";
    if (e.state == "absent" && e.kind == Evidence::Kind::finding) text += ", absent";
    if (e.how == "derived") text += " (derived)";
    return text;
}

template <class Number>
std::string band(std::optional<Number> low, std::optional<Number> high, char const* format) {
    if (!low) return {};
    auto const from = fmt::format(fmt::runtime(format), *low);
    auto const to = fmt::format(fmt::runtime(format), high.value_or(*low));
    return from == to ? from : from + " to " + to;
}

/// An age as people say it: months from two months on, the exact unit before.
std::string age_words(Duration age) {
    constexpr double hours_a_month = 24 * 30.4375;
    auto const months = std::lround(age.hours / hours_a_month);
    return months < 2 ? to_text(age) : fmt::format("{} months", months);
}

/// As the recorder wrote it; a computed one has only its value.
std::string value_words(MeasureResult const& m) {
    if (!m.as_written.empty()) return m.label + " " + m.as_written;
    return fmt::format("{} {:.2f} {}", m.label, m.value, m.unit);
}

std::string short_digest(Provenance const& p) { return p.digest.substr(0, 8); }

}  // namespace

std::string_view how_soon(Urgency urgency) {
    switch (urgency) {
        case Urgency::emergency: return "emergency, call now";
        case Urgency::same_day: return "same day";
        case Urgency::urgent: return "urgent, days to two weeks";
        case Urgency::routine: return "routine";
    }
    return "";
}

std::string_view class_words(FindingClass value) {
    switch (value) {
        case FindingClass::red_flag: return "red flag";
        case FindingClass::major_anomaly: return "major anomaly";
        case FindingClass::minor_variant: return "minor variant";
        case FindingClass::normal_variant: return "normal variant";
    }
    return "";
}

std::string_view strength_words(Strength strength) {
    switch (strength) {
        case Strength::guideline: return "guideline";
        case Strength::study: return "study";
        case Strength::common_practice: return "common practice";
        case Strength::project_choice: return "project choice";
    }
    return "";
}

std::string evidence_words(Evidence const& e) {
    if (e.kind == Evidence::Kind::tally) {
        return fmt::format("{}: {} ({} decides)", e.label, e.value, e.threshold);
    }
    bool const number = e.kind == Evidence::Kind::measure && !e.value.empty();
    return number ? fmt::format("{} {}", e.label, e.value) : with_details(e.label, e);
}

std::string evidence_as_written(Evidence const& e) {
    bool const told = e.kind != Evidence::Kind::measure && !e.as_written.empty() &&
                      fold(e.as_written) != fold(e.label);
    return evidence_words(e) + (told ? fmt::format(" (written `{}`)", e.as_written) : "");
}

std::string evidence_list(std::vector<Evidence> const& list, std::size_t most) {
    std::vector<std::string> words, tallies;
    for (auto const& e : list) {
        if (e.kind != Evidence::Kind::tally)
            words.push_back(evidence_words(e));
        else if (!is_part_of_a_tally(e))
            tallies.push_back(evidence_words(e));
    }
    auto text = first_of(words, most);
    for (auto const& tally : tallies) text += (text.empty() ? "" : "; ") + tally;
    return text;
}

std::string z_words(MeasureResult const& m) {
    auto const read = band(m.z_low, m.z_high, "{:+.2f}");
    auto const wide = band(m.z_with_margin_low, m.z_with_margin_high, "{:+.2f}");
    return wide.empty() || wide == read ? read : fmt::format("{} (with margin {})", read, wide);
}

std::string measure_in_short(MeasureResult const& m) {
    auto const text = value_words(m);
    return m.z_low ? fmt::format("{} (z {})", text, band(m.z_low, m.z_high, "{:+.2f}")) : text;
}

std::string centile_words(MeasureResult const& m) {
    return band(m.centile_low, m.centile_high, "{:.1f}");
}

std::string measure_words(MeasureResult const& m) {
    auto text = value_words(m);
    if (m.z_low) text += ": z " + z_words(m);
    if (m.centile_low) text += ", centile " + centile_words(m);
    if (!m.norm.empty()) text += ", " + m.norm;
    if (!m.note.empty()) text += fmt::format(" ({})", m.note);
    return text;
}

std::string due_words(FollowUpResult const& f) {
    auto const to = f.to_date ? to_text(*f.to_date) : age_words(f.to) + " of age";
    if (f.from.hours == 0) return "by " + to;
    return fmt::format("{} to {}", f.from_date ? to_text(*f.from_date) : age_words(f.from), to);
}

std::string first_of(std::vector<std::string> const& labels, std::size_t most) {
    auto const shown = std::min(most, labels.size());
    auto const end = labels.begin() + static_cast<std::ptrdiff_t>(shown);
    auto text = fmt::format("{}", fmt::join(labels.begin(), end, "; "));
    return shown == labels.size() ? text : fmt::format("{} (+{})", text, labels.size() - shown);
}

std::string counted(std::size_t number, std::string_view one, std::string_view many) {
    return fmt::format("{} {}", number, number == 1 ? one : many);
}

std::string provenance_words(Assessment const& a) {
    return fmt::format("asterism {}; rulebook {} {} ({}); ontology {} ({})", a.engine,
                       a.rulebook.id, a.rulebook.version, short_digest(a.rulebook),
                       a.ontology.version, short_digest(a.ontology));
}

std::string_view safety_text() {
    return "Decision support for trained clinicians: it does not replace the examination, the "
           "senior clinician or local pathways. Signs of distress: stop, call for help. Discuss "
           "findings with the family with care. Nothing here is a diagnosis.";
}

}  // namespace asterism
