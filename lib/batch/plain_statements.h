// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <vector>

#include "batch/fast_case.h"

namespace asterism::batch {

/// Tells whether the statements of a case surely contradict nothing: each finding is stated once,
/// and none is present below one that is stated absent, whatever the sides. One thread's own.
class PlainStatements {
public:
    explicit PlainStatements(Ontology const& ontology);

    bool plain(FastCase const& baby);

private:
    bool each_once(FastCase const& baby);
    bool below_absent(FindingId finding) const;

    static constexpr FindingId none = UINT32_MAX;

    std::vector<FindingId> parents_;
    std::vector<bool> told_;            ///< of the history
    std::vector<std::uint8_t> stated_;  ///< `Stated`, while a case is looked at
};

}  // namespace asterism::batch
