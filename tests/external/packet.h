// SPDX-License-Identifier: MIT
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "ontology/ontology.h"

namespace asterism::testing {

/// What a GA4GH phenopacket (v2 JSON) says of one person and we can use:
/// observed and excluded features by their HPO ids, sex and age. Diseases and
/// interpretations are not even read.
struct Packet {
    std::string id;
    std::string sex;  ///< as we write it; empty when unknown
    std::string age;  ///< such as `P2M`; empty when not an age
    std::vector<std::string> observed;
    std::vector<std::string> excluded;
};

/// Reads a packet; the test stops when it is no packet.
Packet read_packet(std::filesystem::path const& file);

/// A packet as findings of ours. An HPO id that one finding carries is that
/// finding; one that several carry is the finding among them that all others
/// are kinds of, if there is one. Excluded ids count only where exactly one
/// finding carries them and nothing below it is observed.
struct StatedFindings {
    std::vector<std::string> present;
    std::vector<std::string> absent;
    std::vector<std::string> unmapped;   ///< observed ids that no finding carries
    std::vector<std::string> undecided;  ///< observed ids that several unrelated findings carry
};

StatedFindings stated_findings(Packet const& packet, Ontology const& ontology);

/// The case that they make; nothing is marked as examined.
std::string case_text(Packet const& packet, StatedFindings const& stated);

/// An age such as `P1M2D` in days; -1 when it is none.
int days_of(std::string const& iso_duration);

}  // namespace asterism::testing
