// SPDX-License-Identifier: MIT
#pragma once

#include <memory>

#include "batch/batch_writer.h"
#include "rulebook/rulebook.h"

namespace asterism {

/// The compact lines of a batch, one a case: `case`, `urgency` and `referrals`, the keys of
/// `asterism.assessment/1` without those that are null; a service that is not listed is
/// not-suggested. Everything that depends on the book alone is written out beforehand.
std::unique_ptr<batch::BatchWriter const> batch_line_writer(Rulebook const& book);

}  // namespace asterism
