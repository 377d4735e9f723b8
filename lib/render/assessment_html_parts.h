// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "assess/assessment.h"
#include "render/assessment_html_map.h"
#include "render/assessment_view.h"
#include "render/html.h"

namespace asterism {

/// A table with a header for every column and, in each row, for the row: its first cell.
class Table {
public:
    Table(Markup& markup, std::string_view caption, std::vector<std::string> const& columns);
    Table(Table const&) = delete;
    Table& operator=(Table const&) = delete;
    ~Table();
    void row(std::vector<std::string> const& cells);

private:
    Markup& m_;
};

void plain_list(Markup& m, std::vector<std::string> const& texts, std::string style);

/// The services of a group with their reasons; each reason unfolds to evidence, sources and place.
void suggestion_card(Markup& m, SuggestionGroup const& group);
void finding_table(Markup& m, std::vector<FoundInRegion> const& found);
void map_legend(Markup& m);
void constellation_section(Markup& m, Assessment const& assessment);
/// The numbers as a table, then a chart for each measure that has curves.
void measure_section(Markup& m, Assessment const& assessment, AssessmentContext const& context);

}  // namespace asterism
