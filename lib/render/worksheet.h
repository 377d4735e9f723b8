// SPDX-License-Identifier: MIT
#pragma once

#include <string>

#include "ontology/ontology.h"

namespace asterism {

/// An empty case: every exam step head to toe on one line, essential ones marked, to be ticked by
/// taking a `#` away; it reads back in as a case. With `findings`, each step also has its
/// instruction and the findings to look for, as comments.
std::string worksheet_yaml(Ontology const& ontology, bool findings);

/// The same steps as a page to print and to fill in by hand: one sheet of A4, essential steps
/// marked, room for what was found and for the measures.
std::string worksheet_html(Ontology const& ontology);

}  // namespace asterism
