// SPDX-License-Identifier: MIT
#pragma once

#include <utility>
#include <vector>

#include "batch/fast_run.h"

namespace asterism::batch {

/// What it changes that one exam step differs from the start, as long as the case says nothing else
/// of the step's findings. Nodes that hang on this step alone are passed over: nobody looks at
/// them, so what remains is what reaches the others.
struct StepChange {
    std::vector<std::pair<NodeId, Truth>> facts;
    std::vector<std::pair<NodeId, Margin>> gates;  ///< what is added to their margins
};

/// Works it out; the start is as before in the end. `values`: the facts of the step's findings as
/// they become.
StepChange step_change(FastCircuit const& circuit, RunState& start, StepId step,
                       std::vector<std::pair<NodeId, Truth>> const& values);

}  // namespace asterism::batch
