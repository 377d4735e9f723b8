// SPDX-License-Identifier: MIT
#include <algorithm>

#include "image/fields_compiled.h"

namespace asterism {

namespace {

std::vector<std::string_view> const& kinds() {
    static std::vector<std::string_view> const all = restorable_kinds();
    return all;
}

/// Counted from 1; 0 stands for no condition at all.
std::uint8_t kind_number(ConditionPtr const& condition) {
    if (!condition) return 0;
    auto const found = std::ranges::find(kinds(), condition->kind());
    if (found == kinds().end()) throw image::BadImage("a condition of a kind that is not restored");
    return static_cast<std::uint8_t>(found - kinds().begin() + 1);
}

ConditionParts load_parts(image::Reader& archive, std::vector<CompiledCondition> const& children) {
    ConditionParts parts;
    archive(parts.span, parts.state);
    for (auto const& child : children) parts.children.push_back(child.condition);
    return parts;
}

}  // namespace

void save(image::Writer& archive, CompiledCondition const& compiled) {
    auto const& [condition, literal, children] = compiled;
    archive(kind_number(condition), literal, children);
    if (condition) archive(condition->span(), condition->state());
}

void load(image::Reader& archive, CompiledCondition& compiled) {
    auto& [condition, literal, children] = compiled;
    std::uint8_t kind = 0;
    archive(kind, literal, children);
    if (kind == 0) return;
    if (kind > kinds().size()) throw image::BadImage("a condition of an unknown kind");
    condition = restore_condition(kinds()[kind - 1u], load_parts(archive, children));
}

void save(image::Writer& archive, Clause const& clause) {
    archive(clause.literal);
    image::PartsWriter parts(archive, 1);
    archive(*clause);
    parts.end_part();
}

void load(image::Reader& archive, Clause& clause) {
    Literal literal;
    archive(literal);
    auto const parts = image::read_parts(archive);
    auto maker =
        std::make_shared<image::PartMaker<CompiledCondition> const>(parts.at(0), archive.sources());
    clause = Clause(literal, Lazy<CompiledCondition>::deferred(std::move(maker)));
}

}  // namespace asterism
