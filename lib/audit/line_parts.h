// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace asterism::audit {

/// A key of a JSON line's outermost object and the text of its value, as written.
struct LineMember {
    std::string_view key;  ///< without the quotes, escapes untouched
    std::string_view value;
    std::size_t begin = 0;  ///< bytes from the line's start: the key's first quote
    std::size_t end = 0;    ///< behind the value

    bool is_text() const { return !value.empty() && value.front() == '"'; }
};

/// Finds the members of a JSON line without judging their values; false when the line is no object
/// that can be cut so: readers then say why.
bool split_line(std::string_view line, std::vector<LineMember>& members);

/// Overwrites the members that `wanted` does not want with spaces, so that places stay right.
/// `line` points at the text from which the members were cut.
void blank_out(char* line, std::vector<LineMember> const& members,
               std::vector<bool> const& removed);

/// The value as a text: of a string what stands between the quotes (escapes resolved), of a number
/// its digits. Nothing else is a text: `false`.
bool plain_text(LineMember const& member, std::string& text);

}  // namespace asterism::audit
