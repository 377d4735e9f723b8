// SPDX-License-Identifier: MIT
#include "render/layout_blocks.h"

#include <algorithm>

#include <fmt/format.h>

namespace asterism {

namespace {

constexpr auto how_to_see_all = "(--detail full)";

int total_height(std::vector<Block> const& blocks) {
    int lines = 0;
    bool left_out = false;
    for (auto const& block : blocks) {
        lines += height(block);
        left_out = left_out || (block.shown == 0 && block.cut());
    }
    return lines + (left_out ? 1 : 0);
}

std::vector<Block*> in_order_of_rank(std::vector<Block>& blocks) {
    std::vector<Block*> order;
    for (auto& block : blocks) order.push_back(&block);
    std::stable_sort(order.begin(), order.end(),
                     [](auto const* a, auto const* b) { return a->rank < b->rank; });
    return order;
}

std::string left_out_line(std::vector<Block> const& blocks) {
    std::string names;
    for (auto const& block : blocks) {
        if (block.shown == 0 && block.cut()) names += (names.empty() ? "" : ", ") + block.name;
    }
    if (names.empty()) return {};
    auto const room = page_width - static_cast<int>(std::string_view(how_to_see_all).size()) - 11;
    return fmt::format("... also: {} {}\n", shortened(names, room), how_to_see_all);
}

}  // namespace

int height(Block const& block) {
    if (block.shown == 0) return 0;
    int lines = (block.title.empty() ? 0 : 1) + (block.gap ? 1 : 0) + (block.cut() ? 1 : 0);
    for (std::size_t i = 0; i < block.shown; ++i) lines += static_cast<int>(block.items[i].size());
    return lines;
}

void fit(std::vector<Block>& blocks, int most) {
    auto const order = in_order_of_rank(blocks);
    for (auto& block : blocks) block.shown = 0;
    bool grew = true;
    for (std::size_t turn = 0; grew; ++turn) {
        grew = false;
        for (auto* block : order) {
            if (block->shown != turn || !block->cut()) continue;
            ++block->shown;
            if (total_height(blocks) > most)
                --block->shown;
            else
                grew = true;
        }
    }
}

std::string page_of(std::vector<Block> const& blocks, Style const& style) {
    std::string out;
    for (auto const& block : blocks) {
        if (block.shown == 0) continue;
        if (block.gap) out += "\n";
        if (!block.title.empty()) out += style.bold(block.title) + "\n";
        for (std::size_t i = 0; i < block.shown; ++i) {
            for (auto const& line : block.items[i]) out += line + "\n";
        }
        if (block.cut()) {
            out += style.faint(fmt::format("    ... {} more {}", block.items.size() - block.shown,
                                           how_to_see_all)) +
                   "\n";
        }
    }
    auto const left_out = left_out_line(blocks);
    return left_out.empty() ? out : out + style.faint(left_out);
}

}  // namespace asterism
