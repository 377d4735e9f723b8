// SPDX-License-Identifier: MIT
#include "packet.h"

#include <algorithm>
#include <fstream>
#include <regex>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "testing.h"

namespace asterism::testing {

namespace {

using Json = nlohmann::json;

std::string sex_of(Json const& subject) {
    auto const sex = subject.value("sex", "UNKNOWN_SEX");
    if (sex == "FEMALE") return "female";
    return sex == "MALE" ? "male" : "";
}

std::string age_of(Json const& subject) {
    auto const time = subject.find("timeAtLastEncounter");
    if (time == subject.end()) return "";
    auto const age = time->find("age");
    return age == time->end() ? "" : age->value("iso8601duration", "");
}

/// Of several findings with one HPO id, the one that all the others are kinds
/// of.
std::optional<FindingId> common_parent(std::vector<std::uint32_t> const& findings,
                                       Ontology const& ontology) {
    for (auto const id : findings) {
        auto const below = ontology.descendants(id);
        bool const all = std::all_of(findings.begin(), findings.end(), [&](FindingId other) {
            return other == id || std::find(below.begin(), below.end(), other) != below.end();
        });
        if (all) return id;
    }
    return std::nullopt;
}

bool contains(std::vector<std::string> const& list, std::string const& text) {
    return std::find(list.begin(), list.end(), text) != list.end();
}

bool something_below_is_present(FindingId id, StatedFindings const& so_far,
                                Ontology const& ontology) {
    if (contains(so_far.present, ontology.at(id).id.text)) return true;
    auto const below = ontology.descendants(id);
    return std::any_of(below.begin(), below.end(), [&](FindingId child) {
        return contains(so_far.present, ontology.at(child).id.text);
    });
}

void add_observed(std::string const& hpo, Ontology const& ontology, StatedFindings& result) {
    auto const findings = ontology.finding_names.exact(hpo);
    auto const finding = common_parent(findings, ontology);
    if (!finding) {
        (findings.empty() ? result.unmapped : result.undecided).push_back(hpo);
    } else if (auto const& id = ontology.at(*finding).id.text; !contains(result.present, id)) {
        result.present.push_back(id);
    }
}

}  // namespace

Packet read_packet(std::filesystem::path const& file) {
    std::ifstream stream(file);
    auto const json = Json::parse(stream, nullptr, false);
    CAPTURE(file.string());
    REQUIRE_FALSE(json.is_discarded());
    REQUIRE(json.contains("subject"));
    Packet packet;
    packet.id = json.value("id", "");
    packet.sex = sex_of(json["subject"]);
    packet.age = age_of(json["subject"]);
    for (auto const& feature : json.value("phenotypicFeatures", Json::array())) {
        auto& list = feature.value("excluded", false) ? packet.excluded : packet.observed;
        list.push_back(feature.at("type").at("id").get<std::string>());
    }
    return packet;
}

StatedFindings stated_findings(Packet const& packet, Ontology const& ontology) {
    StatedFindings result;
    for (auto const& hpo : packet.observed) add_observed(hpo, ontology, result);
    for (auto const& hpo : packet.excluded) {
        auto const findings = ontology.finding_names.exact(hpo);
        if (findings.size() != 1) continue;
        auto const& id = ontology.at(findings.front()).id.text;
        bool const said = contains(result.absent, id);
        if (!said && !something_below_is_present(findings.front(), result, ontology))
            result.absent.push_back(id);
    }
    return result;
}

std::string case_text(Packet const& packet, StatedFindings const& stated) {
    auto const days = days_of(packet.age);
    auto text = fmt::format("findings: [{}]\nabsent: [{}]\n", fmt::join(stated.present, ", "),
                            fmt::join(stated.absent, ", "));
    if (!packet.sex.empty()) text += fmt::format("sex: {}\n", packet.sex);
    if (days >= 0) text += fmt::format("age: {}d\n", days);
    return text;
}

int days_of(std::string const& iso_duration) {
    static std::regex const form(R"(P(?:(\d+)Y)?(?:(\d+)M)?(?:(\d+)W)?(?:(\d+)D)?(?:T.*)?)");
    std::smatch parts;
    if (iso_duration.size() < 3 || !std::regex_match(iso_duration, parts, form)) return -1;
    constexpr double in_days[] = {365.25, 30.4375, 7, 1};
    double days = 0;
    for (std::size_t i = 0; i < 4; ++i) {
        if (parts[i + 1].matched) days += in_days[i] * std::stoi(parts[i + 1]);
    }
    return static_cast<int>(days);
}

}  // namespace asterism::testing
