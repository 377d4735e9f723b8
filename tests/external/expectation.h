// SPDX-License-Identifier: MIT
#pragma once

#include <string>

#include "assess/assessment.h"

namespace asterism::testing {

/// Checks an answer against a line such as `senior=emergency, genetics,
/// !cardiology, ~ent, nobody`: a service suggested (at that urgency, where one
/// is named), `!` not suggested and settled, `~` not suggested whether settled
/// or not; `nobody`: no service is suggested.
void expect(Assessment const& answer, std::string const& line);

/// True when some rule of this name decided for the service.
bool decided_by(Assessment const& answer, std::string const& service, std::string const& rule);

/// The sentences of all reasons for a service, joined.
std::string reason_texts(Assessment const& answer, std::string const& service);

}  // namespace asterism::testing
