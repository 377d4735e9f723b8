// SPDX-License-Identifier: MIT
#pragma once

#include "image/fields_base.h"
#include "rulebook/rulebook.h"

namespace asterism {

ASTERISM_FIELDS(RulebookHeader, id, effective, title, version, ontology, language)
ASTERISM_FIELDS(Service, id, label)
ASTERISM_FIELDS(CountingKey, id, kind, because, covers)
ASTERISM_FIELDS(Classification, finding, key, meaning, because, sources)
ASTERISM_FIELDS(TallySyntax, id, label, count, score, sources)
ASTERISM_FIELDS(ItemGroup, name, items)
ASTERISM_FIELDS(Action, id, text)
ASTERISM_FIELDS(Suggestion, service, urgency)
ASTERISM_FIELDS(FollowUp, action, from, to)

// Conditions are stored as compiled; as written (`when`, `reached`) they are left out.

template <class Archive>
void serialize(Archive& archive, Derivation& value) {
    auto& [finding, when, because, sources] = value;
    static_cast<void>(when);
    archive(finding, because, sources);
}

template <class Archive>
void serialize(Archive& archive, ScoreItem& value) {
    auto& [item, when, points] = value;
    static_cast<void>(when);
    archive(item, points);
}

template <class Archive>
void serialize(Archive& archive, ConstellationSyntax& value) {
    auto& [id, service, label, groups, reached, note, strength, sources] = value;
    static_cast<void>(reached);
    archive(id, service, label, groups, note, strength, sources);
}

template <class Archive>
void serialize(Archive& archive, Rule& value) {
    auto& [id, when, suggest, first_steps, follow_up, essential, because, caution, strength,
           sources] = value;
    static_cast<void>(when);
    archive(id, suggest, first_steps, follow_up, essential, because, caution, strength, sources);
}

template <class Archive>
void serialize(Archive& archive, Rulebook& value) {
    auto& [header, services, keys, classes, derived, tallies, constellations, actions, rules,
           promises, vignettes, digest] = value;
    static_cast<void>(promises);  // only `prove`, `check` and `compare` read them
    static_cast<void>(vignettes);
    archive(header, services, keys, classes, derived, tallies, constellations, actions, rules,
            digest);
}

}  // namespace asterism
