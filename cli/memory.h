// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>

namespace asterism::cli {

/// Most runs are over in milliseconds and end with their memory: from here on little is given back
/// before. Without effect where the C library is not GNU's.
void keep_memory();

/// Asks for memory that will soon be used in one piece instead of page by page, which costs a fault
/// a page. What is not used costs no more than the asking.
void expect_to_use(std::size_t bytes);

}  // namespace asterism::cli
