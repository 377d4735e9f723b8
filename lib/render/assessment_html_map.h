// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "assess/assessment.h"
#include "render/assessment_context.h"
#include "render/body_map.h"

namespace asterism {

/// The findings of one region, as the page lists them beside the drawing.
struct FoundInRegion {
    std::string region;
    std::string label;
    int number = 0;  ///< 0 when the region has no place on the drawing
    std::vector<Evidence const*> findings;
};

/// Present findings by region, in the order in which the assessment has them.
std::vector<FoundInRegion> found_by_region(Assessment const& assessment,
                                           AssessmentContext const& context);

/// Every region of the drawing with its mark: the weightiest finding, or not examined.
std::vector<MapRegion> marked_regions(Assessment const& assessment,
                                      AssessmentContext const& context);

/// What the drawing shows, in words.
std::string map_description(std::vector<FoundInRegion> const& found);

}  // namespace asterism
