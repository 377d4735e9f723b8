// SPDX-License-Identifier: MIT
/// What the tests of this suite share: small ontologies with norms, and the book that is shipped.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "assess/measure_values.h"
#include "cases/read_case.h"
#include "compile/compiled.h"
#include "compile/norm_descriptions.h"

namespace asterism::testing {

/// An ontology without findings: a ruler, a tape, a scale, a counter, and measures computed from
/// them. `norms` is the text of a `norms:` section, or empty.
std::string ontology_text(std::string const& norms);

/// The diagnostics of reading the norms of an ontology, as `place: message (help)`, one a line.
std::string norm_problems(std::string const& norms, std::vector<SourcePtr> const& tables = {});

/// A small ontology with its norms; the test stops when it does not load.
struct Measuring {
    std::shared_ptr<Ontology const> ontology;
    std::shared_ptr<norms::Standards const> standards;

    /// The readings of a case written in YAML.
    std::vector<MeasureReading> readings(std::string const& case_text) const;
    /// The reading of one measure, which must be there.
    MeasureReading reading(std::string const& case_text, std::string const& measure) const;
    bool has(std::string const& case_text, std::string const& measure) const;
};
Measuring measuring(std::string const& norms);

/// The ontology and the rulebook that the program carries.
CompiledRulebook const& shipped_book();
Measuring const& shipped();

/// The messages of reading a case on the shipped ontology, as above.
std::string case_problems(std::string const& case_text);

}  // namespace asterism::testing
