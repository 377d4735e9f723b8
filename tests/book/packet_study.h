// SPDX-License-Identifier: MIT
/// The folder of open phenopackets, each judged by the shipped book.
#pragma once

#include <array>
#include <filesystem>
#include <string>
#include <vector>

#include "assess/assessment.h"
#include "phenopacket_case.h"

namespace asterism::testing {

enum class AgeGroup { under_one_year, one_to_four, five_to_seventeen, adult, unknown };
inline constexpr std::array age_groups{AgeGroup::under_one_year, AgeGroup::one_to_four,
                                       AgeGroup::five_to_seventeen, AgeGroup::adult,
                                       AgeGroup::unknown};
std::string_view to_text(AgeGroup group);

struct JudgedPacket {
    std::string file;
    bool dysmorphic = false;
    bool under_one_year = false;  ///< column under_1y of the index
    PhenopacketCase mapped;
    std::vector<FindingId> bedside;  ///< findings present that an examination step shows
    AgeGroup age = AgeGroup::unknown;
    Assessment answer;
    Verdict genetics = Verdict::not_suggested;
    bool if_rest_normal = false;    ///< unsettled, but suggested were the rest normal
    bool by_exact_terms = false;    ///< suggested on the exactly mapped terms alone
    bool by_bedside_alone = false;  ///< suggested without history and results of tests
};

/// Reads the columns file, group and under_1y of index.tsv, and every packet it names. The columns
/// that name a disease are not read.
std::vector<JudgedPacket> judge_packets(std::filesystem::path const& folder, HpoGraph const& hpo);

/// A packet of the study's denominator, which phenopackets_test.cpp defines.
bool in_denominator(JudgedPacket const& packet);

/// The findings with class and key, what was counted, and what that lacks.
std::string account_of(JudgedPacket const& packet);

/// In which way the counting fell short; one of a few phrases, for a table of causes.
std::string cause_of_miss(JudgedPacket const& packet);

}  // namespace asterism::testing
