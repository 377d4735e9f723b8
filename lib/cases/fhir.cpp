// SPDX-License-Identifier: MIT
#include "cases/fhir.h"

#include <algorithm>
#include <array>
#include <map>

#include <fmt/format.h>

#include "cases/fhir_parts.h"
#include "cases/loinc.h"
#include "cases/read_records.h"
#include "cases/record_facts.h"
#include "cases/term_statements.h"

namespace asterism {

namespace {

constexpr std::array void_statuses{"entered-in-error", "cancelled"};

struct Resource {
    yaml::Node const* node = nullptr;
    std::string type;
};

/// `Patient/17` out of an absolute address, or the whole when it is one of another kind.
std::string reference_key(std::string const& reference) {
    auto const at = reference.rfind("Patient/");
    return at == std::string::npos ? reference : reference.substr(at);
}

class BundleReader {
public:
    BundleReader(ImportContext const& context, HpoMapper const& mapper, Diagnostics& diagnostics)
        : context_(context), mapper_(mapper), fields_(diagnostics) {}

    std::vector<ImportedCase> read(yaml::Node const& bundle) {
        if (!is_bundle(bundle)) return {};
        for (auto const& entry : fields_.list(bundle, "entry")) {
            if (fields_.is_object(entry, "entry")) add_entry(entry);
        }
        if (cases_.empty())
            fields_.diagnostics().error("no-patient", bundle.span, "the Bundle holds no Patient");
        for (auto const& resource : resources_) read_resource(resource);
        for (std::size_t i = 0; i < cases_.size(); ++i)
            TermStatements(context_.ontology, cases_[i], fields_.diagnostics()).settle();
        return std::move(cases_);
    }

private:
    bool is_bundle(yaml::Node const& bundle) {
        if (!fields_.is_object(bundle, "Bundle")) return false;
        auto const type = fields_.text(bundle, "resourceType");
        if (type.text == "Bundle") return true;
        fields_.diagnostics().error(
            "not-a-bundle", type.empty() ? bundle.span : type.span,
            fmt::format("expected a FHIR Bundle, found {}",
                        type.empty() ? "no `resourceType`" : fmt::format("`{}`", type.text)));
        return false;
    }

    void add_entry(yaml::Node const& entry) {
        auto const* resource = fields_.object(entry, "resource");
        if (!resource) return;
        auto const type = fields_.text(*resource, "resourceType");
        if (type.empty())
            fields_.diagnostics().error("no-type", resource->span,
                                        "a resource needs a `resourceType`");
        if (type.text == "Patient")
            read_patient(*resource, fields_.text(entry, "fullUrl").text);
        else
            resources_.push_back({resource, type.text});
    }

    void read_patient(yaml::Node const& patient, std::string const& url) {
        ImportedCase result;
        result.baby = empty_case(context_.ontology);
        result.baby.id = fields_.text(patient, "id");
        if (!url.empty()) patients_[reference_key(url)] = cases_.size();
        if (!result.baby.id.empty()) patients_["Patient/" + result.baby.id.text] = cases_.size();
        read_gender(patient, result);
        auto const born = fields_.text(patient, "birthDate");
        if (!born.empty()) take_date(born, result.baby.born);
        for (auto const* name : {"name", "identifier", "telecom", "address", "photo", "contact"}) {
            auto const* member = fields_.find(patient, name);
            if (member)
                result.left_out.push_back({fmt::format("Patient.{}", name),
                                           "who the patient is stays outside", member->span});
        }
        cases_.push_back(std::move(result));
    }

    void read_gender(yaml::Node const& patient, ImportedCase& result) {
        static std::map<std::string, Sex> const genders{{"female", Sex::female},
                                                        {"male", Sex::male},
                                                        {"other", Sex::undetermined},
                                                        {"unknown", Sex::not_given}};
        auto const gender = fields_.text(patient, "gender");
        if (gender.empty()) return;
        auto const known = genders.find(gender.text);
        if (known != genders.end()) {
            result.baby.sex = known->second;
            return;
        }
        fields_.diagnostics().error(
            "bad-sex", gender.span,
            fmt::format("`{}` is no gender of FHIR; accepted: female, male, other, unknown",
                        gender.text));
    }

    void take_date(Word const& word, std::optional<Date>& target) {
        auto const date = date_of_timestamp(word.text);
        if (date)
            target = *date;
        else
            fields_.diagnostics().error(
                "bad-date", word.span,
                fmt::format("`{}` is not understood: {}", word.text, date.error()));
    }

    ImportedCase* patient_of(yaml::Node const& resource) {
        auto const* subject = fields_.object(resource, "subject");
        auto const reference = subject ? fields_.text(*subject, "reference") : Word{};
        if (reference.empty()) {
            if (cases_.size() == 1) return &cases_.front();
            fields_.diagnostics().error("no-subject", resource.span,
                                        "a resource without a subject in a Bundle of several "
                                        "patients");
            return nullptr;
        }
        auto const found = patients_.find(reference_key(reference.text));
        if (found != patients_.end()) return &cases_[found->second];
        fields_.diagnostics().error(
            "unknown-subject", reference.span,
            fmt::format("the Bundle holds no Patient `{}`", reference.text));
        return nullptr;
    }

    void read_resource(Resource const& resource) {
        auto* result = cases_.empty() ? nullptr : patient_of(*resource.node);
        if (!result) return;
        if (resource.type == "Observation") return read_observation(*resource.node, *result);
        if (resource.type == "Condition") return read_condition(*resource.node, *result);
        result->left_out.push_back({resource.type,
                                    "only Patient, Observation and Condition are read",
                                    resource.node->span});
    }

    void read_observation(yaml::Node const& node, ImportedCase& result) {
        auto const status = fields_.text(node, "status");
        auto const coded = read_concept(node, "code", fields_);
        if (coded.codings.empty() && coded.text.empty()) {
            fields_.diagnostics().error("no-code", node.span, "an Observation needs a `code`");
            return;
        }
        if (std::find(void_statuses.begin(), void_statuses.end(), status.text) !=
            void_statuses.end()) {
            result.left_out.push_back({fmt::format("the Observation {}", coded.shown()),
                                       fmt::format("its status is `{}`", status.text),
                                       status.span});
            return;
        }
        auto const effective = fields_.text(node, "effectiveDateTime");
        if (!effective.empty() && !result.baby.examined_on)
            take_date(effective, result.baby.examined_on);
        auto const sides = sides_of(read_concept(node, "bodySite", fields_));
        take_value(node, coded, sides, result);
        for (auto const& component : fields_.list(node, "component")) {
            if (fields_.is_object(component, "component"))
                take_value(component, read_concept(component, "code", fields_), sides, result);
        }
    }

    /// An observation, or a component of one.
    void take_value(yaml::Node const& node, FhirConcept const& coded, Sides sides,
                    ImportedCase& result) {
        if (fields_.object(node, "dataAbsentReason"))
            return add_term(map_concept(coded, TermState::not_examined, mapper_, context_.ontology),
                            sides, result);
        if (auto const* quantity = fields_.object(node, "valueQuantity"))
            return take_quantity(*quantity, coded, result);
        if (auto const there = fields_.flag(node, "valueBoolean")) {
            auto const state = *there ? TermState::observed : TermState::excluded;
            return add_term(map_concept(coded, state, mapper_, context_.ontology), sides, result);
        }
        auto const value = read_concept(node, "valueCodeableConcept", fields_);
        if (!value.span.known()) {
            if (fields_.list(node, "component").empty())
                result.left_out.push_back({fmt::format("the Observation {}", coded.shown()),
                                           "it has no value that can be read", node.span});
            return;
        }
        take_coded_value(coded, value, sides, result);
    }

    /// `code` says what, the value present or absent; or the value itself says what was seen.
    void take_coded_value(FhirConcept const& coded, FhirConcept const& value, Sides sides,
                          ImportedCase& result) {
        bool const present =
            value.has(snomed_system, "52101004") || value.has(loinc_system, "LA9633-4");
        bool const absent =
            value.has(snomed_system, "2667000") || value.has(loinc_system, "LA9634-2");
        auto const state = absent ? TermState::excluded : TermState::observed;
        auto const& what = present || absent ? coded : value;
        add_term(map_concept(what, state, mapper_, context_.ontology), sides, result);
    }

    void take_quantity(yaml::Node const& quantity, FhirConcept const& coded, ImportedCase& result) {
        auto const number = fields_.number(quantity, "value");
        auto unit = fields_.text(quantity, "code").text;
        if (unit.empty()) unit = fields_.text(quantity, "unit").text;
        auto const code = coded.code(loinc_system);
        if (code == loinc_gestation) return take_gestation(number, unit, result);
        if (code == loinc_age) return take_age(number, unit, result);
        auto const* known = measure_of_loinc(code);
        if (known && !number.empty())
            return add_measure(known->measure, number, unit_of_ucum(unit), context_.ontology,
                               result, fields_.diagnostics());
        auto const measure = context_.ontology.measure_names.exact(coded.shown());
        if (measure.size() == 1 && !number.empty())
            return add_measure(context_.ontology.measures[measure.front()].id.text, number,
                               unit_of_ucum(unit), context_.ontology, result,
                               fields_.diagnostics());
        result.left_out.push_back({fmt::format("the Observation {}", coded.shown()),
                                   "its code is no measure of ours", coded.span});
    }

    void take_gestation(Word const& number, std::string const& unit, ImportedCase& result) {
        auto const read = gestation_of_quantity(number.text, unit);
        if (read)
            result.baby.gestation = *read;
        else
            fields_.diagnostics().error(
                "bad-gestation", number.span,
                fmt::format("`{} {}` is not understood: {}", number.text, unit, read.error()));
    }

    void take_age(Word const& number, std::string const& unit, ImportedCase& result) {
        static std::map<std::string, std::string> const units{
            {"h", "h"}, {"d", "d"}, {"wk", "w"}, {"mo", "m"}, {"a", "y"}};
        auto const known = units.find(unit);
        auto const read = known == units.end() ? Parsed<Duration>(tl::make_unexpected(std::string(
                                                     "expected a unit h, d, wk, mo or a")))
                                               : parse_duration(number.text + known->second);
        if (read)
            result.baby.age = *read;
        else
            fields_.diagnostics().error(
                "bad-age", number.span,
                fmt::format("`{} {}` is not understood: {}", number.text, unit, read.error()));
    }

    void read_condition(yaml::Node const& node, ImportedCase& result) {
        auto const coded = read_concept(node, "code", fields_);
        auto const verification = read_concept(node, "verificationStatus", fields_);
        auto const clinical = read_concept(node, "clinicalStatus", fields_);
        auto const is = [](FhirConcept const& status, std::string_view code) {
            return std::any_of(status.codings.begin(), status.codings.end(),
                               [&](auto const& coding) { return coding.code.text == code; });
        };
        if (is(verification, "entered-in-error")) {
            result.left_out.push_back({fmt::format("the Condition {}", coded.shown()),
                                       "it was entered in error", node.span});
            return;
        }
        auto state = TermState::observed;
        if (is(clinical, "resolved") || is(clinical, "inactive") || is(clinical, "remission"))
            state = TermState::not_now;
        for (auto const* unsure : {"unconfirmed", "provisional", "differential"}) {
            if (is(verification, unsure)) state = TermState::unsure;
        }
        if (is(verification, "refuted")) state = TermState::excluded;
        auto sides = Sides::not_said;
        for (auto const& site : fields_.list(node, "bodySite"))
            sides = sides | sides_of(site_of(site));
        add_term(map_concept(coded, state, mapper_, context_.ontology), sides, result);
    }

    FhirConcept site_of(yaml::Node const& site) {
        return read_concept(yaml::map(site.span, {{{"site", site.span}, site}}), "site", fields_);
    }

    void add_term(MappedTerm term, Sides sides, ImportedCase& result) {
        TermStatements(context_.ontology, result, fields_.diagnostics())
            .add(std::move(term), sides, {});
    }

    ImportContext const& context_;
    HpoMapper const& mapper_;
    JsonFields fields_;
    std::map<std::string, std::size_t> patients_;
    std::vector<ImportedCase> cases_;
    std::vector<Resource> resources_;
};

}  // namespace

std::vector<ImportedCase> read_fhir(SourcePtr const& source, ImportContext const& context,
                                    Diagnostics& diagnostics) {
    return read_records<BundleReader>(source, context, diagnostics);
}

}  // namespace asterism
