// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/source.h"
#include "base/time.h"
#include "ontology/ontology.h"

namespace asterism {

/// A set of body sides; empty when the writer did not say.
enum class Sides : std::uint8_t { not_said = 0, left = 1, right = 2, both = 3 };

constexpr bool has(Sides sides, Sides wanted) {
    return (static_cast<int>(sides) & static_cast<int>(wanted)) == static_cast<int>(wanted);
}
constexpr Sides operator|(Sides a, Sides b) {
    return static_cast<Sides>(static_cast<int>(a) | static_cast<int>(b));
}
std::string_view to_text(Sides sides);

/// One thing that the writer said of one finding.
struct Statement {
    FindingId finding = 0;
    Word as_written;
    Sides sides = Sides::not_said;
    std::optional<std::uint32_t> grade;  ///< position in the finding's grades
    bool familial = false;
};

/// A measured value in the measure's own unit. `step` is the size of the last printed digit, in
/// that unit.
struct MeasuredValue {
    MeasureId measure = 0;
    double value = 0;
    double step = 0;
    Word as_written;
    Span name_span;
};

/// What the clinician did, for the audit.
struct Decisions {
    std::vector<Word> referred;
    std::optional<Date> on;
};

/// One baby as recorded. Anything not recorded is not examined; nothing is assumed here.
struct Case {
    Word id;
    Sex sex = Sex::not_given;
    std::optional<Gestation> gestation;
    std::optional<Duration> age;
    std::optional<Date> born;
    std::optional<Date> examined_on;
    std::vector<bool> step_done;  ///< by StepId
    bool history_none = false;
    std::vector<Statement> present;
    std::vector<Statement> absent;
    std::vector<Statement> unsure;
    std::vector<MeasuredValue> measures;
    std::optional<Decisions> decisions;

    /// True when no exam step was recorded as done.
    bool nothing_examined() const;
};

/// A case that says nothing.
Case empty_case(Ontology const& ontology);

}  // namespace asterism
