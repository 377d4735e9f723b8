// SPDX-License-Identifier: MIT
#include "oracle/faulty_book.h"

#include "oracle/small_world.h"

namespace asterism::oracle {

namespace {

constexpr std::string_view text = R"(
rulebook: { id: faulty, title: Faulty, version: 1.0.0, effective: 2031-01-01, language: 1,
  ontology: small }
services:
  - { service: genetics, label: genetics }
  - { service: surgery, label: surgery }
  - { service: urology, label: urology }
keys:
  - { key: ear, kind: field, because: One cause. }
  - { key: hand, kind: field, because: One cause. }
  - { key: organ, kind: system, because: One organ., covers: [hand] }
classes:
  - { finding: ear-change, class: minor-variant, key: ear, because: x, sources: [common-practice] }
  - { finding: low-ear, class: minor-variant, key: ear, because: x, sources: [common-practice] }
  - { finding: crease, class: minor-variant, key: hand, because: x, sources: [common-practice] }
  - { finding: chin, class: major-anomaly, key: organ, because: x, sources: [common-practice] }
  - { finding: dimple, class: red-flag, because: x, sources: [common-practice] }
tallies:
  - { tally: minors, label: minor variants, count: [minor-variant] }
  - { tally: majors, label: major anomalies, count: [major-anomaly, red-flag] }
derived:
  - { derive: dimple, when: { measured: width, mm: { above: 5 } }, because: x,
      sources: [common-practice] }
constellations:
  - constellation: pattern
    label: pattern
    for: genetics
    items:
      - { item: crease, when: { present: crease, side: one } }
      - { item: chin, when: { present: chin, grade: marked }, points: 0.5 }
    reached: { tally: pattern, at-least: 1.5 }
    strength: study
    sources: [common-practice]
rules:
  - rule: two
    when: { tally: minors, at-least: 2 }
    suggest: { service: genetics, urgency: same-day }
    because: x
    strength: study
    sources: [common-practice]
  - rule: mixed
    when: { all: [ { tally: majors, at-least: 1 }, { tally: minors, at-least: 1 } ] }
    suggest: { service: genetics, urgency: urgent }
    because: x
    strength: study
    sources: [common-practice]
  - rule: right
    when: { any: [ { all: [ { present: crease, side: right }, { constellation: pattern } ] },
                   { all: [ { present: crease, side: left }, { present: low-ear } ] } ] }
    suggest: { service: surgery, urgency: urgent }
    because: x
    strength: study
    sources: [common-practice]
  - rule: shallow
    when: { any: [ { present: dimple }, { measured: depth, mm: { below: 5 } } ] }
    suggest: { service: surgery, urgency: routine }
    because: x
    strength: study
    sources: [common-practice]
  - rule: boy
    when: { all: [ { sex: male }, { gestation: { below: 37w0d } }, { age: { at-least: 24h } },
                   { none: [ { present: breech } ] } ] }
    suggest: { service: urology, urgency: routine }
    essential: [breech]
    because: x
    strength: study
    sources: [common-practice]
)";

}  // namespace

Subject const& book_to_plant_faults_in() {
    static auto const result = subject(text, small_ontology());
    return *result;
}

}  // namespace asterism::oracle
