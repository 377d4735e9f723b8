// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "batch/fast_judge.h"
#include "oracle/answer.h"

namespace asterism::batch {

/// `genetics: suggested urgent, may rise to emergency`.
std::string to_text(Rulebook const& book, std::size_t service, ServiceAnswer const& answer);
/// One line for each service on which two answers differ.
std::vector<std::string> differences(Rulebook const& book, Answers const& fast,
                                     Answers const& engine);
/// Whether the naive evaluator says the same.
bool same(Answers const& answers, std::vector<oracle::ServiceAnswer> const& naive);

}  // namespace asterism::batch
