// SPDX-License-Identifier: MIT
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "cases/case.h"
#include "oracle/subject.h"

namespace asterism::oracle {

/// Two steps, a chain of two findings that crosses them, a paired finding with a paired kind, a
/// graded one, one of boys only, one that a measure derives, one item of the history.
std::shared_ptr<Ontology const> small_ontology();

/// One thing that a case may say in several ways; the first way is to say nothing.
using Axis = std::vector<std::function<void(Case&)>>;

/// By the name of what it speaks of: `ear`, `low-ear`, `crease`, `deep-crease`, `chin`, `foreskin`,
/// `dimple`, `width`, `depth`, `breech`, `sex`, `gestation`, `age`, `steps`.
Axis const& small_axis(std::string const& name);

/// Every case that the axes can make together, but for those that contradict themselves.
void for_each_small_case(std::vector<std::string> const& axes,
                         std::function<void(Case const&)> const& visit);

}  // namespace asterism::oracle
