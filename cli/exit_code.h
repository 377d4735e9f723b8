// SPDX-License-Identifier: MIT
#pragma once

namespace asterism::cli {

/// What the program's exit status means; never depends on the output format. A suggested referral
/// is not an error.
enum ExitCode : int {
    done = 0,
    internal_error = 1,
    usage = 2,
    invalid_input = 3,
    found_something = 4,  ///< a check, rehearsal, comparison or proof found something
    interrupted = 130,
};

}  // namespace asterism::cli
