// SPDX-License-Identifier: MIT
#pragma once

#include <string>

#include "ontology/ontology.h"

namespace asterism {

/// An empty case with every exam step head to toe, each with its findings as comments; reads back as a case.
std::string worksheet_yaml(Ontology const& ontology);

}  // namespace asterism
