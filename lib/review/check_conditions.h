// SPDX-License-Identifier: MIT
#pragma once

#include "base/diagnostic.h"
#include "compile/compiled.h"
#include "review/sat/solver.h"

namespace asterism {

/// Asks of every condition of the book, for all possible babies: is it met by each of them
/// (`always-fires`), has it a part that none meets (`never-met`), or a part without which it says
/// the same for all of them, in what is met and in what is still possible (`never-decisive`)? The
/// last is a note, and so is `never-met` in a published counting rule, which stands as published;
/// the others are warnings. What is not decided within the limits is left out, and so are
/// conditions that no baby meets at all, which `check_unreachable` tells.
void check_conditions(CompiledRulebook const& book, Diagnostics& diagnostics,
                      sat::Limits const& limits = {20'000, std::chrono::milliseconds{2'000}});

}  // namespace asterism
