// SPDX-License-Identifier: MIT
#include "render/check_codes.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace asterism {

std::string code_pages_text(std::vector<CodePage> const& pages) {
    std::string text;
    for (auto const& page : pages) {
        text += fmt::format(
            "{}{}\n  {}\n  why it matters  {}\n  how to mend it  {}\n  for example     {}\n",
            text.empty() ? "" : "\n", page.code, page.means, page.matters, page.mend, page.example);
    }
    return text;
}

nlohmann::ordered_json code_pages_json(std::vector<CodePage> const& pages) {
    auto list = nlohmann::ordered_json::array();
    for (auto const& page : pages) {
        list.push_back({{"code", page.code},
                        {"means", page.means},
                        {"matters", page.matters},
                        {"mend", page.mend},
                        {"example", page.example}});
    }
    return {{"schema", "asterism.codes/1"}, {"codes", std::move(list)}};
}

}  // namespace asterism
