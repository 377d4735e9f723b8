// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include "base/nearest.h"
#include "conditions/read.h"
#include "yaml/reader.h"

namespace asterism {

namespace {

ConditionKind const* kind_of(yaml::Node const& node) {
    for (auto const& kind : condition_kinds()) {
        if (node.find(kind.keyword)) return &kind;
    }
    return nullptr;
}

void report_unknown(yaml::Node const& node, Diagnostics& diagnostics) {
    std::vector<std::string> names;
    for (auto const& kind : condition_kinds()) names.emplace_back(kind.keyword);
    if (node.entries.empty())
        return yaml::wrong_form(node, "a condition such as `{ present: ... }`", diagnostics);
    yaml::unknown_word(node.entries.front().key, "condition", names, diagnostics);
}

}  // namespace

std::vector<ConditionKind> const& condition_kinds() {
    static std::vector<ConditionKind> const kinds{
        {"present", read_present, present_shape},
        {"absent", read_absent, absent_shape},
        {"all", read_all, all_shape},
        {"any", read_any, any_shape},
        {"none", read_none, none_shape},
        {"of", read_at_least, at_least_shape},
        {"tally", read_tally, tally_shape},
        {"constellation", read_constellation, constellation_shape},
        {"measured", read_measured, measured_shape},
        {"age", read_age, age_shape},
        {"gestation", read_gestation, gestation_shape},
        {"sex", read_sex, sex_shape},
    };
    return kinds;
}

ConditionPtr read_condition(yaml::Node const& node, ReadContext const& context) {
    if (!node.is_map()) {
        yaml::wrong_form(node, "a condition such as `{ present: ... }`", context.diagnostics);
        return nullptr;
    }
    auto const* kind = kind_of(node);
    if (kind) return kind->read(node, context);
    report_unknown(node, context.diagnostics);
    return nullptr;
}

std::vector<ConditionPtr> read_conditions(yaml::Node const& node, ReadContext const& context) {
    if (!node.is_list() || node.items.empty()) {
        yaml::wrong_form(node, "a list of conditions", context.diagnostics);
        return {};
    }
    std::vector<ConditionPtr> result;
    bool complete = true;
    for (auto const& item : node.items) {
        auto condition = read_condition(item, context);
        complete = complete && condition;
        result.push_back(std::move(condition));
    }
    return complete ? result : std::vector<ConditionPtr>{};
}

bool read_finding(Word const& word, ReadContext const& context, FindingId& target) {
    if (auto const found = context.ontology.finding(word.text)) {
        target = *found;
        return true;
    }
    std::vector<std::string> ids;
    for (auto const& finding : context.ontology.findings) ids.push_back(finding.id.text);
    context.diagnostics.error("unknown-finding", word.span,
                              fmt::format("unknown finding `{}`", word.text),
                              did_you_mean(word.text, ids));
    return false;
}

}  // namespace asterism
