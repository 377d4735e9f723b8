// SPDX-License-Identifier: MIT
#include <nlohmann/json.hpp>

#include "render/json.h"

namespace asterism {

namespace {

using Json = nlohmann::ordered_json;

void add_place(Json& object, Span const& span) {
    if (!span.known()) return;
    auto const at = span.position();
    object["file"] = span.source->name();
    object["line"] = at.line;
    object["column"] = at.column;
}

Json to_json(Diagnostic const& diagnostic) {
    Json object{{"code", diagnostic.code},
                {"severity", to_text(diagnostic.severity)},
                {"message", diagnostic.message}};
    add_place(object, diagnostic.span);
    for (auto const& related : diagnostic.related) {
        Json other{{"message", related.message}};
        add_place(other, related.span);
        object["related"].push_back(std::move(other));
    }
    if (!diagnostic.help.empty()) object["help"] = diagnostic.help;
    return object;
}

}  // namespace

Json diagnostics_json(Diagnostics const& diagnostics) {
    Json list = Json::array();
    for (auto const& diagnostic : diagnostics.sorted()) list.push_back(to_json(diagnostic));
    return list;
}

std::string json_text(Json const& document) {
    return document.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace asterism
