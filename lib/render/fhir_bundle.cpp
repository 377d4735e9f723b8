// SPDX-License-Identifier: MIT
#include "render/fhir_bundle.h"

#include <algorithm>
#include <array>
#include <map>

#include <fmt/format.h>

#include "base/quantity.h"
#include "cases/fhir_parts.h"
#include "cases/loinc.h"
#include "render/assessment_view.h"
#include "render/fhir_resources.h"

namespace asterism {

namespace {

using Json = nlohmann::ordered_json;

constexpr auto category_system = "http://terminology.hl7.org/CodeSystem/observation-category";
constexpr auto ucum_system = "http://unitsofmeasure.org";

Json coding(std::string_view system, std::string_view code, std::string_view display) {
    return {{"system", system}, {"code", code}, {"display", display}};
}

/// FHIR ids are letters, digits, `-` and `.`, at most 64.
std::string fhir_id(std::string const& text) {
    constexpr std::size_t longest = 64;
    auto const allowed = [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
               c == '-' || c == '.';
    };
    bool const fine =
        !text.empty() && text.size() <= longest && std::all_of(text.begin(), text.end(), allowed);
    return fine ? text : std::string();
}

class BundleWriter {
public:
    BundleWriter(Assessment const& assessment, Case const& baby, Ontology const& ontology)
        : assessment_(assessment), baby_(baby), ontology_(ontology) {}

    Json write() {
        Json bundle{{"resourceType", "Bundle"}, {"type", "collection"}};
        if (baby_.examined_on) bundle["timestamp"] = to_text(*baby_.examined_on) + "T00:00:00Z";
        subject_ = Json{{"reference", add("patient", patient())}};
        for (auto const& statement : baby_.present) add_finding(statement, "present");
        for (auto const& statement : baby_.absent) add_finding(statement, "absent");
        for (auto const& statement : baby_.unsure) add_finding(statement, "unsure");
        add_facts();
        for (auto const& value : baby_.measures) add_measure(value);
        for (auto const& referral : assessment_.referrals) {
            if (referral.verdict == Verdict::suggested) add_request(referral);
        }
        add("impression", impression());
        bundle["entry"] = std::move(entries_);
        return bundle;
    }

private:
    std::string add(std::string const& role, Json resource) {
        auto address = fhir_address(assessment_, role);
        entries_.push_back(Json{{"fullUrl", address}, {"resource", std::move(resource)}});
        return address;
    }

    Json patient() const {
        static constexpr std::array genders{"unknown", "female", "male", "other"};
        Json patient{{"resourceType", "Patient"}};
        if (auto const id = fhir_id(baby_.id.text); !id.empty()) patient["id"] = id;
        patient["gender"] = genders[static_cast<std::size_t>(baby_.sex)];
        if (baby_.born) patient["birthDate"] = to_text(*baby_.born);
        return patient;
    }

    Json observation(std::string_view category, Json code) const {
        Json result{{"resourceType", "Observation"}, {"status", "final"}};
        result["category"].push_back(
            Json{{"coding", {coding(category_system, category, category)}}});
        result["code"] = std::move(code);
        result["subject"] = subject_;
        if (baby_.examined_on) result["effectiveDateTime"] = to_text(*baby_.examined_on);
        return result;
    }

    Json code_of(Finding const& finding) const {
        Json code = Json::object();
        if (!finding.hpo.empty())
            code["coding"].push_back(coding(hpo_system, finding.hpo.front().text, finding.label));
        code["text"] = finding.label;
        return code;
    }

    /// An HPO id that several findings share would read back as less than was said.
    void add_finding(Statement const& statement, std::string const& state) {
        auto const& finding = ontology_.at(statement.finding);
        bool const history = ontology_.region_of(statement.finding).history;
        auto resource = observation(history ? "social-history" : "exam", code_of(finding));
        if (state == "unsure")
            resource["dataAbsentReason"] = {
                {"coding",
                 {coding("http://terminology.hl7.org/CodeSystem/data-absent-reason", "unknown",
                         "Unknown")}},
                {"text", "could not be decided"}};
        else
            resource["valueBoolean"] = state == "present";
        if (statement.sides != Sides::not_said) resource["bodySite"] = site(statement.sides);
        auto const notes = notes_of(statement, finding);
        if (!notes.empty()) resource["note"] = notes;
        auto const address = add(
            fmt::format("{} {} {}", state, finding.id.text, to_text(statement.sides)), resource);
        if (state == "present") observed_[finding.id.text] = address;
    }

    static Json site(Sides sides) {
        static std::map<Sides, std::pair<std::string, std::string>> const codes{
            {Sides::left, {"7771000", "Left"}},
            {Sides::right, {"24028007", "Right"}},
            {Sides::both, {"51440002", "Right and left"}}};
        auto const& [code, display] = codes.at(sides);
        return {{"coding", {coding(snomed_system, code, display)}}};
    }

    static Json notes_of(Statement const& statement, Finding const& finding) {
        Json notes = Json::array();
        if (statement.grade)
            notes.push_back(Json{{"text", "grade: " + finding.grades[*statement.grade].text}});
        if (statement.familial) notes.push_back(Json{{"text", "a parent or sibling has it too"}});
        return notes;
    }

    void add_facts() {
        if (baby_.gestation) {
            bool const days = baby_.gestation->exact();
            add_quantity("gestation", "exam",
                         coding("http://loinc.org", loinc_gestation, loinc_gestation_display),
                         days ? baby_.gestation->min_days : baby_.gestation->min_days / 7,
                         days ? "d" : "wk");
        }
        if (baby_.age)
            add_quantity("age", "exam", coding("http://loinc.org", loinc_age, "Age"),
                         baby_.age->hours, "h");
    }

    void add_quantity(std::string const& role, std::string_view category, Json code, Json value,
                      std::string const& unit) {
        auto resource = observation(category, Json{{"coding", {code}}, {"text", role}});
        resource["valueQuantity"] = {{"value", std::move(value)}, {"unit", unit}};
        resource["valueQuantity"]["system"] = ucum_system;
        resource["valueQuantity"]["code"] = unit;
        observed_[role] = add("fact " + role, std::move(resource));
    }

    void add_measure(MeasuredValue const& value) {
        auto const& measure = ontology_.measures[value.measure];
        auto const* loinc = loinc_of_measure(measure.id.text);
        Json code{{"text", measure.label}};
        if (loinc)
            code = {{"coding", {coding("http://loinc.org", loinc->code, loinc->display)}},
                    {"text", measure.label}};
        auto resource = observation("exam", std::move(code));
        auto const ucum = ucum_of_unit(measure.unit);
        resource["valueQuantity"] = {{"value", number(value, measure)}, {"unit", measure.unit}};
        if (!ucum.empty()) {
            resource["valueQuantity"]["system"] = ucum_system;
            resource["valueQuantity"]["code"] = ucum;
        }
        observed_[measure.id.text] = add("measure " + measure.id.text, std::move(resource));
    }

    /// The digits as written are the precision; a converted value has none to keep.
    static Json number(MeasuredValue const& value, Measure const& measure) {
        auto const& written = value.as_written.text;
        auto const digits = written.substr(0, written.find_first_not_of("0123456789."));
        auto const quantity = parse_quantity(written);
        auto parsed = Json::parse(digits, nullptr, false);
        bool const same = quantity && quantity->unit == measure.unit && parsed.is_number();
        return same ? parsed : Json(value.value);
    }

    void add_request(Referral const& referral) {
        Json references = Json::array();
        std::vector<std::string> seen;
        for (auto const& reason : referral.reasons) {
            for (auto const& evidence : reason.evidence) {
                auto const found = observed_.find(evidence.id);
                if (found == observed_.end()) continue;
                if (std::find(seen.begin(), seen.end(), found->second) != seen.end()) continue;
                seen.push_back(found->second);
                references.push_back(Json{{"reference", found->second}});
            }
        }
        auto resource = fhir_service_request(assessment_, referral, subject_, references);
        requests_.push_back(Json{{"reference", add("request " + referral.service, resource)}});
    }

    Json impression() const {
        Json result{{"resourceType", "ClinicalImpression"}, {"status", "completed"}};
        result["description"] = "which referrals the recorded findings suggest";
        result["subject"] = subject_;
        if (baby_.examined_on) result["effectiveDateTime"] = to_text(*baby_.examined_on);
        result["protocol"].push_back(rulebook_uri(assessment_));
        result["summary"] = full_headline(assessment_);
        for (auto const& [id, address] : observed_) {
            Json finding{{"itemReference", {{"reference", address}}}};
            if (ontology_.finding(id)) result["finding"].push_back(std::move(finding));
        }
        if (!requests_.empty()) result["supportingInfo"] = requests_;
        for (auto const& sentence : notes()) result["note"].push_back(Json{{"text", sentence}});
        return result;
    }

    std::vector<std::string> notes() const {
        std::vector<std::string> notes;
        if (auto const text = if_normal_sentence(assessment_); !text.empty()) notes.push_back(text);
        for (auto const* step : open_essentials(assessment_))
            notes.push_back("not examined: " + step->label);
        for (auto const& caution : assessment_.cautions) notes.push_back(caution.text);
        notes.push_back(fmt::format("engine {}, rulebook {} {} sha256 {}", assessment_.engine,
                                    assessment_.rulebook.id, assessment_.rulebook.version,
                                    assessment_.rulebook.digest));
        notes.emplace_back(usual_caution);
        return notes;
    }

    Assessment const& assessment_;
    Case const& baby_;
    Ontology const& ontology_;
    Json entries_ = Json::array();
    Json subject_;
    Json requests_ = Json::array();
    std::map<std::string, std::string> observed_;  ///< finding or measure id -> address
};

}  // namespace

Json fhir_bundle(Assessment const& assessment, Case const& baby, Ontology const& ontology) {
    return BundleWriter(assessment, baby, ontology).write();
}

}  // namespace asterism
