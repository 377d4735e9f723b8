// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace asterism {

/// Edits (insert, delete, replace, swap of neighbours) that turn one text into the other, counted
/// over code points; nothing when more than `limit` are needed.
std::optional<int> edit_distance(std::string_view a, std::string_view b, int limit);

/// The known names closest to a mistyped one, best first, at most `count`; names are compared
/// folded and returned as given. A name in which the typed word stands whole counts as near, after
/// true slips.
std::vector<std::string> nearest(std::string_view typed, std::vector<std::string> const& known,
                                 std::size_t count = 3);

/// "did you mean `a`, `b` or `c`", or nothing when no name is near.
std::string did_you_mean(std::string_view typed, std::vector<std::string> const& known);
/// The same sentence for names already chosen.
std::string did_you_mean(std::vector<std::string> const& names);

}  // namespace asterism
