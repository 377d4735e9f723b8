// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

namespace asterism {

/// How much a place of the body stands out on the map.
enum class Mark : std::uint8_t { none, not_examined, normal, minor, major, red_flag };

/// One region of the ontology as the map shows it.
struct MapRegion {
    std::string region;  ///< id, such as `eyes`
    Mark mark = Mark::none;
    int number = 0;  ///< printed on the drawing and in the table beside it; 0 prints none
};

/// A newborn from the front and from the back as an SVG drawing, with the regions marked. Colour is
/// never the only sign: a marked region carries its number, a region that was not examined is
/// hatched. Regions of the whole body (skin, tone) have no place on the drawing and stand only in
/// the table. `description` is read out in place of the picture.
std::string body_map_svg(std::vector<MapRegion> const& regions, std::string const& description);

/// True when the region has a place of its own on the drawing.
bool has_place_on_map(std::string const& region);

/// The rules of the drawing's colours, for light, dark and print.
std::string_view body_map_style();

}  // namespace asterism
