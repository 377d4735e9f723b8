// SPDX-License-Identifier: MIT
#include "rulebook/vocabulary.h"

namespace asterism {

namespace {

/// The accepted words are the printed ones.
template <class E>
yaml::Reader<E> words_of(std::initializer_list<E> values) {
    std::vector<std::pair<std::string, E>> words;
    for (auto const value : values) words.emplace_back(std::string(to_text(value)), value);
    return yaml::choice<E>(std::move(words));
}

}  // namespace

yaml::Reader<FindingClass> finding_class_reader() {
    return words_of({FindingClass::normal_variant, FindingClass::minor_variant,
                     FindingClass::major_anomaly, FindingClass::red_flag});
}

yaml::Reader<Urgency> urgency_reader() {
    return words_of({Urgency::routine, Urgency::urgent, Urgency::same_day, Urgency::emergency});
}

yaml::Reader<KeyKind> key_kind_reader() {
    return words_of({KeyKind::field, KeyKind::sequence, KeyKind::system});
}

yaml::Reader<Strength> strength_reader() {
    return words_of({Strength::guideline, Strength::study, Strength::common_practice,
                     Strength::project_choice});
}

}  // namespace asterism
