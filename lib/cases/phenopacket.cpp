// SPDX-License-Identifier: MIT
#include "cases/phenopacket.h"

#include <fmt/format.h>

#include "cases/phenopacket_parts.h"
#include "cases/read_records.h"
#include "cases/record_facts.h"

namespace asterism {

namespace {

std::vector<std::string> const packet_members{
    "id",         "subject",         "phenotypicFeatures", "measurements",
    "biosamples", "interpretations", "diseases",           "medicalActions",
    "files",      "metaData"};
std::vector<std::string> const subject_members{
    "id",          "alternateIds", "dateOfBirth",   "timeAtLastEncounter",
    "vitalStatus", "sex",          "karyotypicSex", "gender",
    "taxonomy"};
std::vector<std::string> const feature_members{"description", "type",  "excluded",   "severity",
                                               "modifiers",   "onset", "resolution", "evidence"};

class PacketReader {
public:
    PacketReader(ImportContext const& context, HpoMapper const& mapper, Diagnostics& diagnostics)
        : context_(context), mapper_(mapper), fields_(diagnostics) {}

    std::vector<ImportedCase> read(yaml::Node const& value) {
        std::vector<ImportedCase> cases;
        if (!fields_.is_object(value, "phenopacket")) return cases;
        if (auto const* proband = fields_.object(value, "proband")) {
            cases.push_back(packet(*proband));
            read_family(value, cases.back());
        } else if (fields_.find(value, "members")) {
            for (auto const& member : fields_.list(value, "members")) {
                if (fields_.is_object(member, "members")) cases.push_back(packet(member));
            }
        } else {
            cases.push_back(packet(value));
        }
        return cases;
    }

private:
    ImportedCase packet(yaml::Node const& node) {
        ImportedCase result;
        result.baby = empty_case(context_.ontology);
        refuse_version_1(node);
        warn_of_unknown(node, "a phenopacket", packet_members, fields_);
        result.baby.id = fields_.text(node, "id");
        if (result.baby.id.empty())
            fields_.diagnostics().error("no-id", node.span, "a phenopacket needs an `id`");
        if (auto const* subject = fields_.object(node, "subject")) {
            warn_of_unknown(*subject, "a subject", subject_members, fields_);
            read_subject(*subject, fields_, result);
        }
        read_features(node, result);
        read_measurements(node, fields_, context_.ontology, result);
        leave_out(node, result);
        return result;
    }

    void refuse_version_1(yaml::Node const& node) {
        auto const* meta = fields_.object(node, "metaData");
        auto const version = meta ? fields_.text(*meta, "phenopacketSchemaVersion") : Word{};
        if (version.text.starts_with("1")) return version_1(version.span);
        auto const* subject = fields_.object(node, "subject");
        auto const* age = subject ? fields_.find(*subject, "ageAtCollection") : nullptr;
        if (age) return version_1(age->span);
        for (auto const& feature : fields_.list(node, "phenotypicFeatures")) {
            auto const* negated = fields_.find(feature, "negated");
            if (negated) return version_1(negated->span);
        }
    }

    void version_1(Span const& span) {
        fields_.diagnostics().error(
            "phenopacket-v1", span,
            "this is a phenopacket of version 1, where an excluded finding is written otherwise",
            "convert it to version 2 first");
    }

    void read_features(yaml::Node const& node, ImportedCase& result) {
        TermStatements statements(context_.ontology, result, fields_.diagnostics());
        for (auto const& feature : fields_.list(node, "phenotypicFeatures")) {
            if (!fields_.is_object(feature, "phenotypicFeatures")) continue;
            warn_of_unknown(feature, "a phenotypic feature", feature_members, fields_);
            read_feature(feature, statements, result);
        }
        statements.settle();
    }

    void read_feature(yaml::Node const& feature, TermStatements& statements, ImportedCase& result) {
        auto const* type = fields_.object(feature, "type");
        auto const id = type ? fields_.text(*type, "id") : Word{};
        if (id.empty()) {
            fields_.diagnostics().error("no-id", type ? type->span : feature.span,
                                        "a phenotypic feature needs a `type` with an `id`");
            return;
        }
        auto const label = fields_.text(*type, "label").text;
        bool const excluded = fields_.flag(feature, "excluded").value_or(false);
        auto term = excluded ? mapper_.excluded(id, label) : mapper_.observed(id, label);
        if (!excluded) read_course(feature, term, result);
        auto const qualifiers = read_qualifiers(feature, fields_, result);
        statements.add(std::move(term), qualifiers.sides, qualifiers.severity);
    }

    /// Resolved is not present, and what came after the examination was not there. What cannot be
    /// compared with the age counts as there.
    void read_course(yaml::Node const& feature, MappedTerm& term, ImportedCase& result) {
        auto const& age = result.baby.age;
        if (auto const* resolution = fields_.object(feature, "resolution")) {
            auto const time = read_time(*resolution, fields_);
            bool const later = time.age && age && *time.age > *age;
            if (!later) term.state = TermState::not_now;
        }
        auto const* onset = fields_.object(feature, "onset");
        if (!onset) return;
        auto const time = read_time(*onset, fields_);
        bool const after = time.age && age && *time.age > *age;
        if (after) term.state = TermState::not_now;
        result.left_out.push_back({fmt::format("the onset of {}", quoted_term(term)),
                                   after ? "it lies after the examination"
                                         : "a case records what is there at the examination",
                                   onset->span});
    }

    void leave_out(yaml::Node const& node, ImportedCase& result) {
        for (auto const* answer : {"diseases", "interpretations"}) {
            auto const* member = fields_.find(node, answer);
            if (member)
                result.left_out.push_back({answer,
                                           "never read: rules judge what is seen, not what was "
                                           "concluded",
                                           member->span});
        }
        for (auto const* other : {"biosamples", "medicalActions", "files"}) {
            auto const* member = fields_.find(node, other);
            if (member)
                result.left_out.push_back({other, "the rules do not ask for it", member->span});
        }
    }

    void read_family(yaml::Node const& family, ImportedCase& result) {
        for (auto const* other : {"relatives", "pedigree"}) {
            auto const* member = fields_.find(family, other);
            if (member)
                result.left_out.push_back({other, "only the proband is read", member->span});
        }
        bool const related = fields_.flag(family, "consanguinousParents").value_or(false);
        auto const finding = context_.ontology.finding("consanguinity");
        if (!related) return;
        auto const& span = fields_.find(family, "consanguinousParents")->span;
        if (!finding) {
            result.left_out.push_back(
                {"consanguinousParents", "the ontology has no such finding", span});
            return;
        }
        Statement statement;
        statement.finding = *finding;
        statement.as_written = {"consanguinousParents", span};
        result.baby.present.push_back(std::move(statement));
    }

    ImportContext const& context_;
    HpoMapper const& mapper_;
    JsonFields fields_;
};

}  // namespace

std::vector<ImportedCase> read_phenopackets(SourcePtr const& source, ImportContext const& context,
                                            Diagnostics& diagnostics) {
    return read_records<PacketReader>(source, context, diagnostics);
}

}  // namespace asterism
