// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "assess/assessment.h"
#include "cases/case.h"

namespace asterism {

/// The address of a resource within a Bundle, `urn:uuid:...`: made of the case and the resource's
/// role, so that the same input gives the same bytes.
std::string fhir_address(Assessment const& assessment, std::string const& role);

/// A suggestion as a draft proposal that nobody can take for an order. `subject` is a Reference.
nlohmann::ordered_json fhir_service_request(Assessment const& assessment, Referral const& referral,
                                            nlohmann::ordered_json const& subject,
                                            nlohmann::ordered_json const& reason_references);

/// The reasons of a referral, a line each, with strength and sources.
std::string reason_line(Reason const& reason);

/// `routine`, `urgent`, `asap` or `stat`.
std::string fhir_priority(Urgency urgency);

/// The rulebook with version and digest, as an address.
std::string rulebook_uri(Assessment const& assessment);

/// What every output for people carries.
inline constexpr auto usual_caution =
    "Decision support for trained clinicians. It does not replace the examination, the senior "
    "clinician or local pathways, and it is not a diagnosis.";

}  // namespace asterism
