// SPDX-License-Identifier: MIT
#include "cases/phenopacket_parts.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "base/nearest.h"
#include "cases/loinc.h"
#include "cases/record_facts.h"

namespace asterism {

namespace {

constexpr std::array other_times{"ageRange", "gestationalAge", "ontologyClass", "timestamp",
                                 "interval"};
constexpr std::string_view fake_birth = "1970-01-01";

struct SeverityTerm {
    std::string_view id, word;
};
constexpr std::array severities{
    SeverityTerm{"HP:0012827", "borderline"}, SeverityTerm{"HP:0012825", "mild"},
    SeverityTerm{"HP:0012826", "moderate"},   SeverityTerm{"HP:0012828", "severe"},
    SeverityTerm{"HP:0012829", "profound"},
};

std::string named(Word const& id, Word const& label) {
    return label.empty() ? id.text : fmt::format("{} ({})", id.text, label.text);
}

void read_sex(yaml::Node const& subject, JsonFields const& fields, Case& baby) {
    auto const* sex = fields.find(subject, "sex");
    if (!sex) return;
    static std::array const words{"UNKNOWN_SEX", "FEMALE", "MALE", "OTHER_SEX"};
    static std::array const values{Sex::not_given, Sex::female, Sex::male, Sex::undetermined};
    for (std::size_t i = 0; i < words.size(); ++i) {
        bool const by_number = !sex->quoted && sex->text == std::to_string(i);
        if (sex->is_scalar() && (sex->text == words[i] || by_number)) {
            baby.sex = values[i];
            return;
        }
    }
    yaml::Node const& written = *sex;
    fields.diagnostics().error("bad-sex", written.span,
                               fmt::format("`{}` is no sex of a phenopacket; accepted: {}",
                                           written.text, fmt::join(words, ", ")));
}

void read_last_encounter(yaml::Node const& subject, JsonFields const& fields,
                         ImportedCase& result) {
    auto const* last = fields.object(subject, "timeAtLastEncounter");
    if (!last) return;
    auto const time = read_time(*last, fields);
    result.baby.age = time.age;
    if (time.other == "timestamp") {
        auto const at = fields.text(*last, "timestamp");
        auto const date = date_of_timestamp(at.text);
        if (date) result.baby.examined_on = *date;
        if (!date && !at.empty())
            fields.diagnostics().error(
                "bad-date", at.span,
                fmt::format("`{}` is not understood: {}", at.text, date.error()));
        return;
    }
    if (time.other.empty()) return;
    result.left_out.push_back({fmt::format("the time of the last encounter ({})", time.other),
                               "only an age after birth is an age; the age stays unknown",
                               time.span});
}

void read_birth(yaml::Node const& subject, JsonFields const& fields, ImportedCase& result) {
    auto const born = fields.text(subject, "dateOfBirth");
    if (born.empty()) return;
    if (born.text.starts_with(fake_birth)) {
        fields.diagnostics().warning(
            "fake-birth", born.span,
            "the date of birth 1970-01-01 is what conversions leave behind; it is not used");
        return;
    }
    auto const date = date_of_timestamp(born.text);
    if (date)
        result.baby.born = *date;
    else
        fields.diagnostics().error(
            "bad-date", born.span,
            fmt::format("`{}` is not understood: {}", born.text, date.error()));
}

std::string_view local_part(std::string_view curie, std::string_view prefix) {
    return curie.starts_with(prefix) ? curie.substr(prefix.size()) : std::string_view();
}

class Measurements {
public:
    Measurements(JsonFields const& fields, Ontology const& ontology, ImportedCase& result)
        : fields_(fields), ontology_(ontology), result_(result) {}

    void read(yaml::Node const& measurement) {
        if (!fields_.is_object(measurement, "measurements")) return;
        auto const* assay = fields_.object(measurement, "assay");
        if (!assay) return left_out("a measurement", "it names no assay", measurement.span);
        auto const id = fields_.text(*assay, "id");
        auto const name = named(id, fields_.text(*assay, "label"));
        auto const* value = fields_.object(measurement, "value");
        auto const* quantity = value ? fields_.object(*value, "quantity") : nullptr;
        if (!quantity) return left_out(name, "its value is not a quantity", id.span);
        auto const number = fields_.number(*quantity, "value");
        auto const* unit = fields_.object(*quantity, "unit");
        if (number.empty() || !unit) return left_out(name, "it has no number or no unit", id.span);
        take(id, name, number, fields_.text(*unit, "id").text, measurement);
    }

private:
    void take(Word const& id, std::string const& name, Word const& number, std::string const& unit,
              yaml::Node const& measurement) {
        auto const code = local_part(id.text, "LOINC:");
        if (code == loinc_gestation) return gestation(number, unit);
        auto const* known = measure_of_loinc(code);
        if (!known) return left_out(name, "its code is no measure of ours", id.span);
        auto const* when = fields_.object(measurement, "timeObserved");
        auto const time = when ? read_time(*when, fields_) : PacketTime{};
        auto const& age = result_.baby.age;
        if (time.age && age && *time.age != *age)
            return left_out(name, "it was taken at another age than the examination", id.span);
        add_measure(known->measure, number, unit_of_ucum(unit), ontology_, result_,
                    fields_.diagnostics());
    }

    void gestation(Word const& number, std::string const& unit) {
        auto const read = gestation_of_quantity(number.text, unit);
        if (read) {
            result_.baby.gestation = *read;
            return;
        }
        fields_.diagnostics().error(
            "bad-gestation", number.span,
            fmt::format("`{} {}` is not understood: {}", number.text, unit, read.error()));
    }

    void left_out(std::string what, std::string why, Span span) {
        result_.left_out.push_back({std::move(what), std::move(why), std::move(span)});
    }

    JsonFields const& fields_;
    Ontology const& ontology_;
    ImportedCase& result_;
};

}  // namespace

PacketTime read_time(yaml::Node const& element, JsonFields const& fields) {
    PacketTime time{std::nullopt, {}, element.span};
    if (auto const* age = fields.object(element, "age")) {
        auto const text = fields.text(*age, "iso8601duration");
        auto const read = parse_iso_duration(text.text);
        if (read) {
            time.age = *read;
        } else if (text.text == "P" || text.empty()) {
            fields.diagnostics().warning("bad-age", text.empty() ? age->span : text.span,
                                         "an age without a number; the age stays unknown",
                                         "birth is `P0D`");
        } else {
            fields.diagnostics().error(
                "bad-age", text.span,
                fmt::format("`{}` is not understood: {}", text.text, read.error()));
        }
        return time;
    }
    for (auto const* kind : other_times) {
        if (fields.find(element, kind)) time.other = kind;
    }
    return time;
}

FeatureQualifiers read_qualifiers(yaml::Node const& feature, JsonFields const& fields,
                                  ImportedCase& result) {
    FeatureQualifiers qualifiers;
    for (auto const& modifier : fields.list(feature, "modifiers")) {
        if (!fields.is_object(modifier, "modifiers")) continue;
        auto const id = fields.text(modifier, "id");
        if (id.text == "HP:0012832") qualifiers.sides = Sides::both;
        if (id.text == "HP:0012834") qualifiers.sides = qualifiers.sides | Sides::right;
        if (id.text == "HP:0012835") qualifiers.sides = qualifiers.sides | Sides::left;
        bool const side =
            id.text == "HP:0012832" || id.text == "HP:0012834" || id.text == "HP:0012835";
        if (side) continue;
        auto const severity = std::find_if(severities.begin(), severities.end(),
                                           [&](auto const& s) { return s.id == id.text; });
        if (severity != severities.end()) {
            qualifiers.severity = std::string(severity->word);
            continue;
        }
        result.left_out.push_back(
            {fmt::format("the modifier {}", named(id, fields.text(modifier, "label"))),
             "a case has no place for it", modifier.span});
    }
    auto const* severity = fields.object(feature, "severity");
    if (!severity) return qualifiers;
    auto const id = fields.text(*severity, "id");
    auto const known = std::find_if(severities.begin(), severities.end(),
                                    [&](auto const& s) { return s.id == id.text; });
    if (known != severities.end())
        qualifiers.severity = std::string(known->word);
    else
        result.left_out.push_back(
            {fmt::format("the severity {}", named(id, fields.text(*severity, "label"))),
             "it is none of the terms below HP:0012824", severity->span});
    return qualifiers;
}

void read_subject(yaml::Node const& subject, JsonFields const& fields, ImportedCase& result) {
    read_sex(subject, fields, result.baby);
    read_last_encounter(subject, fields, result);
    read_birth(subject, fields, result);
    for (auto const* name :
         {"karyotypicSex", "vitalStatus", "taxonomy", "gender", "alternateIds"}) {
        auto const* member = fields.find(subject, name);
        if (member)
            result.left_out.push_back(
                {fmt::format("subject.{}", name), "the rules do not ask for it", member->span});
    }
}

void read_measurements(yaml::Node const& packet, JsonFields const& fields, Ontology const& ontology,
                       ImportedCase& result) {
    Measurements measurements(fields, ontology, result);
    for (auto const& measurement : fields.list(packet, "measurements"))
        measurements.read(measurement);
}

void warn_of_unknown(yaml::Node const& object, std::string_view what,
                     std::vector<std::string> const& known, JsonFields const& fields) {
    for (auto const& [key, value] : object.entries) {
        bool const familiar = std::any_of(known.begin(), known.end(), [&](std::string const& name) {
            return fields.find(object, name) == &value;
        });
        if (familiar || value.kind == yaml::Kind::null) continue;
        fields.diagnostics().warning(
            "unknown-member", key.span,
            fmt::format("{} has no member `{}`; it is not read", what, key.text),
            did_you_mean(key.text, known));
    }
}

}  // namespace asterism
