// SPDX-License-Identifier: MIT
// Cases as GA4GH Phenopackets v2. What a packet cannot say (which steps were done, what runs in the
// family, doubts, findings without an HPO id of their own) is listed. No disease and no
// interpretation is ever written.
#include <array>

#include <fmt/format.h>

#include "base/quantity.h"
#include "cases/hpo_mapping.h"
#include "cases/loinc.h"
#include "cases/record_facts.h"
#include "render/case_writers.h"
#include "render/json.h"

namespace asterism {

namespace {

using Json = nlohmann::ordered_json;

Json term(std::string_view id, std::string_view label) { return {{"id", id}, {"label", label}}; }

std::string time_of(Date date) { return to_text(date) + "T00:00:00Z"; }

class PacketWriter {
public:
    PacketWriter(Case const& baby, std::size_t number, WriteContext const& context,
                 HpoMapper const& mapper, std::vector<NotSaid>& not_said)
        : baby_(baby), context_(context), mapper_(mapper), not_said_(not_said) {
        id_ = baby.id.empty() ? fmt::format("case-{}", number) : baby.id.text;
    }

    Json write() {
        Json packet{{"id", id_}, {"subject", subject()}};
        for (auto const& statement : baby_.present) add(statement, false, packet);
        for (auto const& statement : baby_.absent) add(statement, true, packet);
        add_measurements(packet);
        packet["metaData"] = meta_data();
        note_the_rest();
        return packet;
    }

private:
    void lost(std::string what, std::string why) {
        not_said_.push_back({id_, std::move(what), std::move(why)});
    }

    Json subject() {
        static constexpr std::array sexes{"UNKNOWN_SEX", "FEMALE", "MALE", "OTHER_SEX"};
        Json subject{{"id", id_}};
        if (baby_.sex != Sex::not_given)
            subject["sex"] = sexes[static_cast<std::size_t>(baby_.sex)];
        if (baby_.born) subject["dateOfBirth"] = time_of(*baby_.born);
        if (baby_.age)
            subject["timeAtLastEncounter"]["age"]["iso8601duration"] = to_iso_duration(*baby_.age);
        else if (baby_.examined_on)
            subject["timeAtLastEncounter"]["timestamp"] = time_of(*baby_.examined_on);
        if (baby_.age && baby_.examined_on)
            lost("examined-on", "a packet gives either the age or the date of the encounter");
        return subject;
    }

    void add(Statement const& statement, bool absent, Json& packet) {
        auto const& finding = context_.ontology.at(statement.finding);
        auto id = absent ? mapper_.id_of_absent(statement.finding)
                         : mapper_.id_of_present(statement.finding);
        auto const what = fmt::format("{} `{}`", absent ? "absent" : "present", finding.id.text);
        if (id.empty() && finding.hpo.empty()) return lost(what, "it has no HPO id");
        if (id.empty() && absent) return lost(what, "its HPO id would also exclude other findings");
        if (id.empty()) {
            id = finding.hpo.front().text;
            lost(what,
                 fmt::format("{} is shared with other findings; it reads back as less exact", id));
        }
        auto const* known = context_.hpo ? context_.hpo->find(id) : nullptr;
        Json feature{{"type", term(id, known ? known->label : finding.label)}};
        if (absent) feature["excluded"] = true;
        add_side(statement.sides, feature);
        add_grade(statement, what, feature);
        if (statement.familial) lost(fmt::format("familial of {}", what), "a packet has no word");
        packet["phenotypicFeatures"].push_back(std::move(feature));
    }

    void add_side(Sides sides, Json& feature) {
        if (sides == Sides::left) feature["modifiers"].push_back(term("HP:0012835", "Left"));
        if (sides == Sides::right) feature["modifiers"].push_back(term("HP:0012834", "Right"));
        if (sides == Sides::both) feature["modifiers"].push_back(term("HP:0012832", "Bilateral"));
    }

    void add_grade(Statement const& statement, std::string const& what, Json& feature) {
        auto const grade = grade_text(statement, context_.ontology);
        if (grade == "mild") feature["severity"] = term("HP:0012825", "Mild");
        if (grade == "moderate") feature["severity"] = term("HP:0012826", "Moderate");
        if (grade == "marked") feature["severity"] = term("HP:0012828", "Severe");
        if (!grade.empty() && !feature.contains("severity"))
            lost(fmt::format("grade `{}` of {}", grade, what), "HPO has no such severity");
    }

    static Json measurement(std::string_view code, std::string_view display, std::string_view unit,
                            Json value) {
        return {{"assay", term(fmt::format("LOINC:{}", code), display)},
                {"value",
                 {{"quantity",
                   {{"unit", term(fmt::format("UCUM:{}", unit), unit)},
                    {"value", std::move(value)}}}}}};
    }

    /// The number keeps its digits: they are its precision.
    void add_measurements(Json& packet) {
        if (baby_.gestation) {
            bool const days = baby_.gestation->exact();
            packet["measurements"].push_back(
                measurement(loinc_gestation, loinc_gestation_display, days ? "d" : "wk",
                            days ? baby_.gestation->min_days : baby_.gestation->min_days / 7));
        }
        for (auto const& value : baby_.measures) add_measure(value, packet);
    }

    void add_measure(MeasuredValue const& value, Json& packet) {
        auto const& measure = context_.ontology.measures[value.measure];
        auto const* code = loinc_of_measure(measure.id.text);
        if (!code)
            return lost(fmt::format("measure `{}`", measure.id.text), "no LOINC code is known");
        auto const& written = value.as_written.text;
        auto const digits = written.substr(0, written.find_first_not_of("0123456789."));
        auto const quantity = parse_quantity(written);
        auto number = Json::parse(digits, nullptr, false);
        auto const unit = quantity ? ucum_of_unit(quantity->unit) : std::string();
        bool const one_number =
            written.find_first_of("0123456789", digits.size()) == std::string::npos;
        if (unit.empty() || !one_number || !number.is_number()) {
            lost(fmt::format("measure `{}` as written, `{}`", measure.id.text, written),
                 fmt::format("it is given in {}", measure.unit));
            packet["measurements"].push_back(
                measurement(code->code, code->display, ucum_of_unit(measure.unit), value.value));
            return;
        }
        if (number.dump() != digits)
            lost(fmt::format("measure `{}` as written, `{}`", measure.id.text, written),
                 "a packet keeps the value, not its last zeros");
        packet["measurements"].push_back(
            measurement(code->code, code->display, unit, std::move(number)));
    }

    Json meta_data() const {
        auto const created = baby_.examined_on ? time_of(*baby_.examined_on) : context_.created;
        auto const hpo_version =
            context_.hpo ? context_.hpo->version() : context_.ontology.header.hpo_version;
        auto const resource = [](auto id, auto name, auto url, std::string const& version,
                                 auto prefix, auto iri) {
            return Json{{"id", id},
                        {"name", name},
                        {"url", url},
                        {"version", version},
                        {"namespacePrefix", prefix},
                        {"iriPrefix", iri}};
        };
        Json meta{{"created", created}, {"createdBy", "asterism"}};
        meta["resources"].push_back(resource("hp", "Human Phenotype Ontology",
                                             "http://purl.obolibrary.org/obo/hp.owl", hpo_version,
                                             "HP", "http://purl.obolibrary.org/obo/HP_"));
        meta["resources"].push_back(resource("loinc", "LOINC", "https://loinc.org", "unversioned",
                                             "LOINC", "https://loinc.org/"));
        meta["resources"].push_back(resource("ucum", "Unified Code for Units of Measure",
                                             "https://ucum.org", "2.1", "UCUM",
                                             "http://unitsofmeasure.org/"));
        meta["phenopacketSchemaVersion"] = "2.0";
        return meta;
    }

    void note_the_rest() {
        if (!baby_.nothing_examined())
            lost("examined", "a packet cannot say which steps were done");
        if (baby_.history_none) lost("history: none", "a packet cannot say it");
        if (baby_.decisions) lost("decisions", "a packet records the patient, not the referral");
        for (auto const& statement : baby_.unsure)
            lost(fmt::format("unsure `{}`", context_.ontology.at(statement.finding).id.text),
                 "a packet knows observed and excluded only");
    }

    Case const& baby_;
    WriteContext const& context_;
    HpoMapper const& mapper_;
    std::vector<NotSaid>& not_said_;
    std::string id_;
};

}  // namespace

std::string write_phenopackets(std::vector<Case> const& cases, WriteContext const& context,
                               std::vector<NotSaid>& not_said) {
    HpoMapper const mapper({context.ontology, context.hpo});
    std::string text;
    for (std::size_t i = 0; i < cases.size(); ++i) {
        auto const packet = PacketWriter(cases[i], i + 1, context, mapper, not_said).write();
        text += cases.size() == 1 ? json_text(packet) : packet.dump() + "\n";
    }
    return text;
}

}  // namespace asterism
