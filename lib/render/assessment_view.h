// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "assess/assessment.h"

namespace asterism {

/// Suggested services that the same rules reach, most urgent first, under one heading.
struct SuggestionGroup {
    std::vector<Referral const*> referrals;
    std::vector<Reason const*> reasons;   ///< told here
    std::vector<Reason const*> repeated;  ///< told under an earlier heading already
};

/// The suggestions in the order in which a reader acts: most urgent first, then book order. A rule
/// is told once, under the most urgent heading that it decides.
std::vector<SuggestionGroup> suggestion_groups(Assessment const& assessment);

/// `senior clinician and cardiology (emergency, call now); ophthalmology (same day)`. The referrals
/// are suggested ones, most urgent first.
std::string services_with_urgency(std::vector<Referral const*> const& referrals);
std::string heading_of(SuggestionGroup const& group);

/// Referrals with a verdict, most urgent first.
std::vector<Referral const*> with_verdict(Assessment const& assessment, Verdict verdict);

/// Essential steps that are not done, the most telling for unsettled verdicts first.
std::vector<StepToDo const*> open_essentials(Assessment const& assessment);

/// What to do, how soon, and the first essential step that is open. Where it can be, it is made to
/// fit `width` columns: distant services turn into their number, the most urgent ones stay.
std::string headline(Assessment const& assessment, int width);
/// The same with every service named, however long.
std::string full_headline(Assessment const& assessment);
/// Every suggested service with its urgency, as a sentence. Empty without a suggestion.
std::string services_by_urgency(Assessment const& assessment);

/// One sentence for all unsettled verdicts: what they would be if the rest were normal. May be
/// empty.
std::string if_normal_sentence(Assessment const& assessment);

/// What else could make a suggestion more urgent, one sentence an urgency.
std::vector<std::string> rise_sentences(Assessment const& assessment);

/// Why not: for each service without a suggestion, what the nearest partly met rule lacked.
std::vector<std::string> nearest_sentences(Assessment const& assessment);

/// What would change the verdicts, one sentence for services that share it: suggestions, then
/// unsettled verdicts, then those not suggested. Unless `complete`, what a reader can guess from
/// the rest of the page is left out, and so are further services beside a suggestion.
std::vector<std::string> change_sentences(Assessment const& assessment, bool complete);

}  // namespace asterism
