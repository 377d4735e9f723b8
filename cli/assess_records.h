// SPDX-License-Identifier: MIT
#pragma once

#include "compile/compiled.h"
#include "options.h"
#include "render/assessment_writers.h"

namespace asterism::cli {

/// `assess --input FORMAT`: judges every case of the files and folders. Foreign records are
/// followed by how their terms were mapped: in the text, under `import` in JSON, else on stderr. A
/// record with an error gets no verdict and leaves the others theirs; several JSON answers are JSON
/// Lines.
int assess_records(Options const& options, CompiledRulebook const& book,
                   AssessmentWriter const& writer, TextOptions text);

}  // namespace asterism::cli
