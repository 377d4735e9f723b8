// SPDX-License-Identifier: MIT
#include <nlohmann/json.hpp>

#include "render/json.h"
#include "render/measure_numbers.h"

namespace asterism {

namespace {

using Json = nlohmann::ordered_json;

template <class T>
Json text_or_null(std::optional<T> const& value) {
    return value ? Json(to_text(*value)) : Json();
}

void add_text(Json& object, char const* key, std::string_view text) {
    if (!text.empty()) object[key] = text;
}

template <class List, class Make>
Json list_of(List const& list, Make make) {
    Json result = Json::array();
    for (auto const& item : list) result.push_back(make(item));
    return result;
}

Json evidence_list(std::vector<Evidence> const& list) { return list_of(list, evidence_json); }

Json reason(Reason const& r) {
    Json object{{"rule", r.rule},
                {"text", r.text},
                {"urgency", to_text(r.urgency)},
                {"strength", to_text(r.strength)},
                {"evidence", evidence_list(r.evidence)},
                {"sources", r.sources},
                {"place", r.place}};
    if (!r.lacks.empty()) object["lacks"] = r.lacks;
    add_text(object, "caution", r.caution);
    return object;
}

Json step(StepToDo const& s) {
    Json object{{"step", s.step},
                {"label", s.label},
                {"region", s.region},
                {"essential", s.essential},
                {"findings", s.findings}};
    if (s.rules > 0) object["rules"] = s.rules;
    return object;
}

Json changes(std::vector<std::vector<Change>> const& sets) {
    return list_of(sets, [](std::vector<Change> const& set) {
        return list_of(set, [](Change const& c) {
            return Json{{"finding", c.id}, {"label", c.label}};
        });
    });
}

Json what_would_change(WhatWouldChange const& w) {
    return {{"without", changes(w.without)},
            {"more_without", w.more_without},
            {"with", changes(w.with)},
            {"more_with", w.more_with},
            {"alone", w.alone},
            {"examine", list_of(w.examine, step)},
            {"steps_to_complete", w.steps_to_complete}};
}

Json referral(Referral const& r) {
    return {{"service", r.service},
            {"label", r.label},
            {"verdict", to_text(r.verdict)},
            {"if_rest_normal", text_or_null(r.if_rest_normal)},
            {"urgency", text_or_null(r.urgency)},
            {"may_rise_to", text_or_null(r.may_rise_to)},
            {"reasons", list_of(r.reasons, reason)},
            {"settled_by", list_of(r.settled_by, step)},
            {"open_facts", r.open_facts},
            {"what_would_change", what_would_change(r.what_would_change)}};
}

Json constellation(ConstellationResult const& c) {
    Json object{{"constellation", c.constellation},
                {"label", c.label},
                {"for", c.service},
                {"reached", to_text(c.reached)},
                {"counted", c.low},
                {"at_most", c.high},
                {"of", c.possible},
                {"rule", c.rule}};
    object["items"] = list_of(c.items, [](ItemResult const& item) {
        return Json{{"item", item.item}, {"points", item.points}, {"value", to_text(item.value)}};
    });
    object["strength"] = to_text(c.strength);
    object["sources"] = c.sources;
    add_text(object, "note", c.note);
    return object;
}

std::optional<norms::Band> band(std::optional<double> const& low,
                                std::optional<double> const& high) {
    return low ? std::optional(norms::Band{*low, *high}) : std::nullopt;
}

Json measure(MeasureResult const& m) {
    Json object{{"measure", m.measure},
                {"label", m.label},
                {"as_written", m.as_written},
                {"value", rounded(m.value)},
                {"unit", m.unit}};
    add_text(object, "norm", m.norm);
    add_band(object, "z", band(m.z_low, m.z_high), band(m.z_with_margin_low, m.z_with_margin_high));
    add_band(object, "centile", band(m.centile_low, m.centile_high),
             band(m.centile_with_margin_low, m.centile_with_margin_high));
    object["value_band"] = {rounded(m.value_low), rounded(m.value_high)};
    object["computed"] = m.computed;
    add_text(object, "note", m.note);
    return object;
}

Json follow_up(FollowUpResult const& f) {
    Json object{{"action", f.action},
                {"text", f.text},
                {"rule", f.rule},
                {"from", to_text(f.from)},
                {"to", to_text(f.to)}};
    if (f.from_date) object["from_date"] = to_text(*f.from_date);
    if (f.to_date) object["to_date"] = to_text(*f.to_date);
    return object;
}

Json caution(Caution const& c) {
    Json object{{"text", c.text}};
    for (auto const& place : c.places) object["places"].push_back(place.place());
    return object;
}

Json provenance(Provenance const& p) {
    return {{"id", p.id}, {"version", p.version}, {"sha256", p.digest}};
}

Json tally(TallyResult const& t) {
    return {{"tally", t.tally},
            {"label", t.label},
            {"value", t.low},
            {"at_most", t.high},
            {"counted", evidence_list(t.counted)}};
}

Json not_examined(NotExamined const& n) {
    return {{"steps", list_of(n.steps, step)},
            {"unsure", evidence_list(n.unsure)},
            {"history", n.history},
            {"facts", n.facts}};
}

}  // namespace

Json evidence_json(Evidence const& e) {
    static constexpr char const* kinds[] = {"finding", "tally", "constellation", "measure", "fact"};
    Json object;
    auto const* kind = kinds[static_cast<int>(e.kind)];
    object[kind] = e.id.empty() ? e.label : e.id;
    if (!e.id.empty()) object["label"] = e.label;
    if (e.finding_class) object["class"] = to_text(*e.finding_class);
    add_text(object, "state", e.state);
    add_text(object, "how", e.how);
    add_text(object, "as_written", e.as_written);
    add_text(object, "side", e.side);
    add_text(object, "grade", e.grade);
    add_text(object, "key", e.key);
    add_text(object, "value", e.value);
    add_text(object, "threshold", e.threshold);
    if (e.familial) object["familial"] = true;
    return object;
}

Json assessment_json(Assessment const& a) {
    Json object{{"schema", "asterism.assessment/1"},
                {"engine", a.engine},
                {"rulebook", provenance(a.rulebook)},
                {"ontology", provenance(a.ontology)}};
    object["ontology"]["hpo_version"] = a.hpo_version;
    object["case"] = a.case_id.empty() ? Json() : Json(a.case_id);
    object["urgency"] = text_or_null(a.urgency);
    object["referrals"] = list_of(a.referrals, referral);
    object["measures"] = list_of(a.measures, measure);
    object["set_aside"] = list_of(a.set_aside, [](SetAside const& s) {
        return Json{{"finding", s.finding}, {"label", s.label}, {"why", s.why}};
    });
    object["tallies"] = list_of(a.tallies, tally);
    object["constellations"] = list_of(a.constellations, constellation);
    object["findings"] = evidence_list(a.findings);
    object["not_examined"] = not_examined(a.not_examined);
    object["first_steps"] = list_of(a.first_steps, [](auto const& s) {
        return Json{{"action", s.first}, {"text", s.second}};
    });
    object["follow_up"] = list_of(a.follow_up, follow_up);
    object["cautions"] = list_of(a.cautions, caution);
    return object;
}

}  // namespace asterism
