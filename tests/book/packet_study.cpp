// SPDX-License-Identifier: MIT
#include "packet_study.h"

#include <algorithm>
#include <fstream>
#include <map>
#include <sstream>

#include <fmt/format.h>
#include <fmt/ranges.h>
#include <nlohmann/json.hpp>

#include "assess/assess.h"
#include "shipped_book.h"
#include "testing.h"

namespace asterism::testing {

namespace {

constexpr double days_a_year = 365.25;
constexpr std::size_t enough_findings = 2;

using Row = std::map<std::string, std::string>;

std::vector<std::string> cells(std::string const& line) {
    std::vector<std::string> result;
    std::istringstream stream(line);
    for (std::string cell; std::getline(stream, cell, '\t');) result.push_back(cell);
    return result;
}

/// The three columns that say where a packet is and how old; nothing of what was diagnosed.
std::vector<Row> read_index(std::filesystem::path const& path) {
    std::ifstream stream(path);
    std::string line;
    REQUIRE_MESSAGE(std::getline(stream, line), "no index in ", path.string());
    auto const names = cells(line);
    std::vector<Row> rows;
    while (std::getline(stream, line)) {
        auto const values = cells(line);
        Row row;
        for (std::size_t i = 0; i < names.size() && i < values.size(); ++i) {
            auto const& name = names[i];
            if (name == "file" || name == "group" || name == "under_1y") row[name] = values[i];
        }
        rows.push_back(std::move(row));
    }
    return rows;
}

AgeGroup age_group(JudgedPacket const& packet) {
    if (packet.under_one_year) return AgeGroup::under_one_year;
    if (!packet.mapped.age_days) return AgeGroup::unknown;
    auto const years = *packet.mapped.age_days / days_a_year;
    if (years < 1) return AgeGroup::under_one_year;
    if (years < 5) return AgeGroup::one_to_four;
    return years < 18 ? AgeGroup::five_to_seventeen : AgeGroup::adult;
}

Referral const& genetics_in(Assessment const& answer) {
    auto const found = std::find_if(answer.referrals.begin(), answer.referrals.end(),
                                    [](Referral const& r) { return r.service == "genetics"; });
    REQUIRE(found != answer.referrals.end());
    return *found;
}

/// The same packet with the observed terms that had to go up to an ancestor left out.
PhenopacketCase exact_only(PhenopacketCase packet) {
    std::vector<FindingId> exact;
    for (auto const& term : packet.observed) {
        if (term.how != Mapping::exact) continue;
        exact.insert(exact.end(), term.findings.begin(), term.findings.end());
    }
    std::sort(exact.begin(), exact.end());
    exact.erase(std::unique(exact.begin(), exact.end()), exact.end());
    packet.present = std::move(exact);
    return packet;
}

Assessment answer_to(PhenopacketCase const& packet) {
    auto const& book = shipped_book();
    return assess(book, case_from(packet.text(*book.ontology)));
}

bool suggests_genetics(PhenopacketCase const& packet) {
    return genetics_in(answer_to(packet)).verdict == Verdict::suggested;
}

void judge(JudgedPacket& packet) {
    packet.answer = answer_to(packet.mapped);
    auto const& genetics = genetics_in(packet.answer);
    packet.genetics = genetics.verdict;
    packet.if_rest_normal = genetics.if_rest_normal == Verdict::suggested;
    packet.by_exact_terms = suggests_genetics(exact_only(packet.mapped));
    auto bedside = packet.mapped;
    bedside.present = packet.bedside;
    packet.by_bedside_alone = suggests_genetics(bedside);
}

std::string low(JudgedPacket const& packet, std::string_view tally) {
    for (auto const& result : packet.answer.tallies) {
        if (result.tally == tally) return result.low;
    }
    return "?";
}

std::string classed(FindingId id) {
    auto const& book = shipped_book();
    auto const& name = book.ontology->at(id).id.text;
    auto const& known = book.classes[id];
    if (book.ontology->at(id).history) return fmt::format("{} (told or tested)", name);
    if (!known) return fmt::format("{} (neutral)", name);
    auto const key = known->key ? " " + book.book->keys[*known->key].id.text : std::string();
    return fmt::format("{} ({}{})", name, to_text(known->value), key);
}

std::vector<std::string> labels_nowhere(JudgedPacket const& packet) {
    std::vector<std::string> labels;
    for (auto const& term : packet.mapped.observed) {
        if (term.findings.empty()) labels.push_back(term.label);
    }
    return labels;
}

}  // namespace

std::string_view to_text(AgeGroup group) {
    switch (group) {
        case AgeGroup::under_one_year: return "under 1 year";
        case AgeGroup::one_to_four: return "1 to 4 years";
        case AgeGroup::five_to_seventeen: return "5 to 17 years";
        case AgeGroup::adult: return "adult";
        case AgeGroup::unknown: return "age unknown";
    }
    return "";
}

std::vector<JudgedPacket> judge_packets(std::filesystem::path const& folder, HpoGraph const& hpo) {
    auto const& ontology = *shipped_book().ontology;
    PhenopacketReader const reader(ontology, hpo);
    std::vector<JudgedPacket> packets;
    for (auto const& row : read_index(folder / "index.tsv")) {
        JudgedPacket packet;
        packet.file = row.at("file");
        packet.dysmorphic = row.at("group") == "dysmorphic";
        packet.under_one_year = row.at("under_1y") == "1";
        std::ifstream stream(folder / packet.file);
        packet.mapped = reader.read(nlohmann::json::parse(stream));
        for (auto const id : packet.mapped.present) {
            if (!ontology.at(id).history) packet.bedside.push_back(id);
        }
        packet.age = age_group(packet);
        judge(packet);
        packets.push_back(std::move(packet));
    }
    return packets;
}

bool in_denominator(JudgedPacket const& packet) {
    return packet.dysmorphic && packet.under_one_year && packet.bedside.size() >= enough_findings;
}

std::string account_of(JudgedPacket const& packet) {
    std::vector<std::string> findings;
    for (auto const id : packet.mapped.present) findings.push_back(classed(id));
    std::string text = fmt::format("  {}{}\n    {}\n    counted: {} minor, {} major; {}\n",
                                   packet.file, packet.mapped.before_birth ? " (fetus)" : "",
                                   fmt::join(findings, ", "), low(packet, "minor-variants"),
                                   low(packet, "major-anomalies"), cause_of_miss(packet));
    auto const nowhere = labels_nowhere(packet);
    if (!nowhere.empty()) text += fmt::format("    not ours: {}\n", fmt::join(nowhere, ", "));
    return text;
}

std::string cause_of_miss(JudgedPacket const& packet) {
    if (packet.if_rest_normal) return "unsettled, suggested were the rest normal";
    auto const minors = low(packet, "minor-variants");
    auto const majors = low(packet, "major-anomalies");
    if (majors == "1" && minors == "1") return "one major with one minor";
    if (majors == "1") return "a single major";
    if (minors == "2") return "two independent minors";
    if (minors == "1") return "one independent minor";
    return "nothing that is counted";
}

}  // namespace asterism::testing
