// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "assess/assessment.h"

namespace asterism {

/// The words that all writers for people share. Every text here is plain: a writer escapes it for
/// its own format.

/// `emergency, call now`, `same day`, `urgent, days to two weeks`, `routine`.
std::string_view how_soon(Urgency urgency);
/// `red flag`, `major anomaly`, `minor variant`, `normal variant`.
std::string_view class_words(FindingClass value);
/// `guideline`, `study`, `common practice`, `project choice`.
std::string_view strength_words(Strength strength);

/// One thing that was seen: `white pupil, right`; a tally as `label: 3 (at least 3 decides)`.
std::string evidence_words(Evidence const& evidence);
/// The same, with the user's own words where they differ from the label.
std::string evidence_as_written(Evidence const& evidence);
/// Findings first, tallies after them; from `most` on only their number: `a; b (+3)`.
std::string evidence_list(std::vector<Evidence> const& list, std::size_t most = 1000);

/// `head circumference 29.5 cm: z -2.71, centile 0.3, norm`.
std::string measure_words(MeasureResult const& measure);
/// The same in short: `head circumference 29.5 cm (z -2.71)`.
std::string measure_in_short(MeasureResult const& measure);
/// As read, and with the margin of the reading where that makes a difference.
std::string z_words(MeasureResult const& measure);
std::string centile_words(MeasureResult const& measure);

/// `by 2031-04-16`, `4w to 6w`.
std::string due_words(FollowUpResult const& follow_up);

/// A label and `(+n)`: the first `most` of some labels and how many there are besides.
std::string first_of(std::vector<std::string> const& labels, std::size_t most);
std::string counted(std::size_t number, std::string_view one, std::string_view many);

/// Engine, rulebook and ontology with the first eight digits of their digests.
std::string provenance_words(Assessment const& assessment);

/// The lines that every output for people ends with.
std::string_view safety_text();

}  // namespace asterism
