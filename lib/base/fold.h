// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>

namespace asterism {

/// True when the bytes are well-formed UTF-8 (no overlong forms, no surrogates).
/// `bad` receives the offset of the first byte that is not.
bool is_utf8(std::string_view text, std::size_t* bad = nullptr);

/// The form under which names are compared: compatibility-decomposed, case-folded, letters and
/// digits only (accents, hyphens, spaces and punctuation dropped), and `ae`/`oe` written `e`, so
/// that haemangioma and hemangioma are one name. Ill-formed UTF-8 folds to its ASCII letters and
/// digits.
std::string fold(std::string_view text);

/// Columns that a text takes on a terminal.
int display_width(std::string_view text);

}  // namespace asterism
