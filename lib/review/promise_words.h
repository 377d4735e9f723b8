// SPDX-License-Identifier: MIT
#pragma once

#include <string>

#include "rulebook/rulebook.h"

namespace asterism {

/// The babies that a promise speaks of: "each red-flag; except webbed-neck; nothing else present".
std::string promised_babies(PromiseSyntax const& promise);

/// What holds for them: "suggested: any, at least urgent".
std::string promised_outcome(PromiseSyntax const& promise);

}  // namespace asterism
