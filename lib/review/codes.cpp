// SPDX-License-Identifier: MIT
#include "review/codes.h"

#include <algorithm>

namespace asterism {

namespace {

std::vector<CodePage> joined() {
    std::vector<CodePage> all;
    for (auto const* part : {&code_pages_of_text(), &code_pages_of_names(), &code_pages_of_book(),
                             &code_pages_of_meaning(), &code_pages_of_cases(),
                             &code_pages_of_releases(), &code_pages_of_audits()})
        all.insert(all.end(), part->begin(), part->end());
    std::sort(all.begin(), all.end(),
              [](CodePage const& a, CodePage const& b) { return a.code < b.code; });
    return all;
}

}  // namespace

std::vector<CodePage> const& code_pages() {
    static std::vector<CodePage> const pages = joined();
    return pages;
}

CodePage const* find_code(std::string_view code) {
    for (auto const& page : code_pages()) {
        if (page.code == code) return &page;
    }
    return nullptr;
}

}  // namespace asterism
