// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "render/layout.h"

namespace asterism {

using Lines = std::vector<std::string>;

/// A part of a page that may show only its first items. `title` stands on its own line when it is
/// not empty; a block without one carries its label in the first line of its first item.
struct Block {
    std::string name;  ///< by which the closing line names it when it is left out
    std::string title;
    std::vector<Lines> items;
    int rank = 0;      ///< lower ones get room first
    bool gap = false;  ///< a blank line before it
    std::size_t shown = 0;

    bool cut() const { return shown < items.size(); }
};

/// Lines that a block takes with the items that it shows; none when it shows none.
int height(Block const& block);

/// Sets `shown` of each block so that all together take at most `most` lines. First every block in
/// the order of its rank gets one item, then the next one, and so on; a line that says what was cut
/// is counted.
void fit(std::vector<Block>& blocks, int most);

/// The blocks as they are shown, and a last line that names what was left out altogether.
std::string page_of(std::vector<Block> const& blocks, Style const& style);

}  // namespace asterism
