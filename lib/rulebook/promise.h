// SPDX-License-Identifier: MIT
#pragma once

#include "rulebook/rulebook.h"
#include "yaml/table.h"

namespace asterism {

/// The field table of a promise: reads it and describes it for schemas.
yaml::Table<PromiseSyntax> promise_table();

}  // namespace asterism
