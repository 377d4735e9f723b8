// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "batch/fast_judge.h"
#include "cases/case.h"

namespace asterism::batch {

/// How a batch writes what it found. Shared between threads.
class BatchWriter {
public:
    virtual ~BatchWriter() = default;
    /// Adds the line of one case: the verdicts, without reasons.
    virtual void answer(std::string_view id, Answers const& answers, std::string& out) const = 0;
    /// Adds the line of one case with everything that `assess` would say of it.
    virtual void explained(Assessment const& assessment, std::string& out) const = 0;
    /// The record of a line that was refused, without the line's number.
    virtual std::string refused(std::string_view id, Diagnostics const& diagnostics,
                                std::vector<Evidence> const& red_flags) const = 0;
};

}  // namespace asterism::batch
