// SPDX-License-Identifier: MIT
#pragma once

#include "options.h"

namespace asterism::cli {

/// --batch and the options that go with it.
void add_batch_options(Options& options);
/// Whether many cases were asked for. Throws UsageError when only the options that go with it
/// were given.
bool is_batch(Options const& options);
/// `assess FILE --batch`: one line a case, in input order, the same bytes for any --jobs.
int assess_batch(Options const& options);

}  // namespace asterism::cli
