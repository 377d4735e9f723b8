// SPDX-License-Identifier: MIT
/// The minor anomalies that the European registry leaves out when they stand alone, beside how the
/// book classes them.
///
/// Membership is from memory (EUROCAT Guide 1.4, chapter 3.2, whose text was not at hand); the item
/// texts are our own words. A registry-minor is not the same as clinically trivial: where the book
/// differs, it does so on purpose, and the reason stands here.
#pragma once

#include <vector>

#include "rulebook/rulebook.h"

namespace asterism::testing {

struct RegistryItem {
    char const* region;
    char const* item;        ///< what the registry lists
    char const* finding;     ///< our nearest finding
    FindingClass our_class;  ///< as recorded here; the book must agree
    char const* difference;  ///< why the book differs from `minor variant`; empty when it does not
};

std::vector<RegistryItem> const& registry_list();

}  // namespace asterism::testing
