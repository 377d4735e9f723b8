// SPDX-License-Identifier: MIT
#include "rulebook/rulebook.h"

namespace asterism {

std::string_view to_text(FindingClass value) {
    switch (value) {
        case FindingClass::normal_variant: return "normal-variant";
        case FindingClass::minor_variant: return "minor-variant";
        case FindingClass::major_anomaly: return "major-anomaly";
        case FindingClass::red_flag: return "red-flag";
    }
    return "";
}

std::string_view to_text(Urgency value) {
    switch (value) {
        case Urgency::routine: return "routine";
        case Urgency::urgent: return "urgent";
        case Urgency::same_day: return "same-day";
        case Urgency::emergency: return "emergency";
    }
    return "";
}

std::string_view to_text(KeyKind value) {
    switch (value) {
        case KeyKind::field: return "field";
        case KeyKind::sequence: return "sequence";
        case KeyKind::system: return "system";
    }
    return "";
}

std::string_view to_text(Strength value) {
    switch (value) {
        case Strength::guideline: return "guideline";
        case Strength::study: return "study";
        case Strength::common_practice: return "common-practice";
        case Strength::project_choice: return "project-choice";
    }
    return "";
}

}  // namespace asterism
