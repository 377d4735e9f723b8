// SPDX-License-Identifier: MIT
#include <fmt/format.h>
#include <fmt/ranges.h>

#include "cases/csv_cases.h"
#include "render/case_writers.h"

namespace asterism {

namespace {

using Json = nlohmann::ordered_json;

/// `low-set-ears; right; familial`, `except=hips`, or the plain word.
std::string item_text(Json const& item) {
    if (item.is_string()) return item.get<std::string>();
    if (item.contains("except")) {
        std::vector<std::string> words;
        for (auto const& step : item["except"])
            words.push_back("except=" + step.get<std::string>());
        return fmt::format("{}", fmt::join(words, "|"));
    }
    auto text = item["finding"].get<std::string>();
    for (auto const* key : {"side", "grade"}) {
        if (item.contains(key)) text += "; " + item[key].get<std::string>();
    }
    return item.contains("familial") ? text + "; familial" : text;
}

std::string list_text(Json const& list) {
    std::vector<std::string> items;
    if (list.is_string()) return list.get<std::string>();
    for (auto const& item : list) items.push_back(item_text(item));
    return fmt::format("{}", fmt::join(items, "|"));
}

std::string measures_text(Json const& measures) {
    std::vector<std::string> items;
    for (auto const& [name, value] : measures.items())
        items.push_back(name + "=" + value.get<std::string>());
    return fmt::format("{}", fmt::join(items, "|"));
}

std::string cell(Json const& tree, std::string const& column) {
    if (column == "referred" || column == "decided-on") {
        if (!tree.contains("decisions")) return {};
        auto const& decisions = tree["decisions"];
        if (column == "decided-on")
            return decisions.contains("on") ? decisions["on"].get<std::string>() : std::string();
        return decisions["referred"].empty() ? "none" : list_text(decisions["referred"]);
    }
    if (!tree.contains(column)) return {};
    return column == "measures" ? measures_text(tree[column]) : list_text(tree[column]);
}

}  // namespace

std::string write_csv_cases(std::vector<Case> const& cases, WriteContext const& context,
                            std::vector<NotSaid>& not_said) {
    auto text = fmt::format("{}\n", fmt::join(csv_columns(), ","));
    for (auto const& baby : cases) {
        auto const tree = case_json(baby, context.ontology, not_said);
        std::vector<std::string> cells;
        for (auto const column : csv_columns())
            cells.push_back(csv_quoted(cell(tree, std::string(column))));
        text += fmt::format("{}\n", fmt::join(cells, ","));
    }
    return text;
}

}  // namespace asterism
