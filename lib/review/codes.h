// SPDX-License-Identifier: MIT
#pragma once

#include <string_view>
#include <vector>

namespace asterism {

/// What one code of a diagnostic stands for, for people. Plain text, sentences; the example shows
/// what is written wrongly and, behind `->`, how it is right.
struct CodePage {
    std::string_view code;
    std::string_view means;
    std::string_view matters;
    std::string_view mend;
    std::string_view example;
};

/// The page of every code that the library or the program can print, sorted by code. A test reads
/// the sources: a code without a page fails, and so does a page without a code.
std::vector<CodePage> const& code_pages();

/// The page of exactly this code, or null.
CodePage const* find_code(std::string_view code);

// The pages by subject; `code_pages` joins them.
std::vector<CodePage> const& code_pages_of_text();
std::vector<CodePage> const& code_pages_of_names();
std::vector<CodePage> const& code_pages_of_book();
std::vector<CodePage> const& code_pages_of_meaning();
std::vector<CodePage> const& code_pages_of_cases();
std::vector<CodePage> const& code_pages_of_releases();
std::vector<CodePage> const& code_pages_of_audits();

}  // namespace asterism
