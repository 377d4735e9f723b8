// SPDX-License-Identifier: MIT
#pragma once

#include "oracle/subject.h"

namespace asterism::oracle {

/// True for cases on which oracle and engine are known to differ, and the oracle is held to be
/// right. Each kind has a test in disputed_test.cpp that is marked as failing; when the engine
/// follows, the test says so, and the mark and the line here go.
bool disputed(Subject const& subject, Case const& baby);

}  // namespace asterism::oracle
