// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <nlohmann/json_fwd.hpp>

#include "compile/compiled.h"

namespace asterism {

inline constexpr auto lookup_schema = "asterism.lookup/1";

/// A finding as a person asks about it.
struct LookupEntry {
    Finding const* finding = nullptr;
    std::string region, step, how, parent, finding_class, key, because;
    std::vector<std::string> sources;
    std::vector<std::string> rules;  ///< rules whose conditions name it or one of its ancestors
    std::vector<std::string> children;
};

/// The findings that a name can mean: one, or several when it is ambiguous, or none.
std::vector<LookupEntry> look_up(CompiledRulebook const& book, std::string_view words);

std::string lookup_text(std::vector<LookupEntry> const& entries);
nlohmann::ordered_json lookup_json(std::string_view words, std::vector<LookupEntry> const& entries);

}  // namespace asterism
