// SPDX-License-Identifier: MIT
#pragma once

#include "oracle/subject.h"

namespace asterism::oracle {

/// A small book in which every kind of fact and gate occurs and matters, for planting faults in.
Subject const& book_to_plant_faults_in();

}  // namespace asterism::oracle
