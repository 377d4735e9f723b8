// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace asterism::cli {

/// One sub-command: a line of the table in main.cpp and a file of its own.
struct Verb {
    std::string_view name;
    std::string_view summary;
    int (*run)(std::vector<std::string> const& arguments);
};

/// Every verb, in the order of the help.
std::vector<Verb> const& all_verbs();

int assess_verb(std::vector<std::string> const& arguments);
int completion_verb(std::vector<std::string> const& arguments);
int convert_verb(std::vector<std::string> const& arguments);
int audit_verb(std::vector<std::string> const& arguments);
int check_verb(std::vector<std::string> const& arguments);
int schema_verb(std::vector<std::string> const& arguments);
int compare_verb(std::vector<std::string> const& arguments);
int forecast_verb(std::vector<std::string> const& arguments);
int handbook_verb(std::vector<std::string> const& arguments);
int lookup_verb(std::vector<std::string> const& arguments);
int measure_verb(std::vector<std::string> const& arguments);
int prove_verb(std::vector<std::string> const& arguments);
int rehearse_verb(std::vector<std::string> const& arguments);
int release_verb(std::vector<std::string> const& arguments);
int worksheet_verb(std::vector<std::string> const& arguments);

}  // namespace asterism::cli
