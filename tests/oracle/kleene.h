// SPDX-License-Identifier: MIT
#pragma once

#include "base/truth.h"

namespace asterism::oracle {

/// Strong Kleene logic, written out case by case on purpose: the engine's operators are arithmetic.
inline Truth opposite(Truth a) {
    if (a == Truth::yes) return Truth::no;
    if (a == Truth::no) return Truth::yes;
    return Truth::unknown;
}

inline Truth both(Truth a, Truth b) {
    if (a == Truth::no || b == Truth::no) return Truth::no;
    if (a == Truth::yes && b == Truth::yes) return Truth::yes;
    return Truth::unknown;
}

inline Truth either(Truth a, Truth b) {
    if (a == Truth::yes || b == Truth::yes) return Truth::yes;
    if (a == Truth::no && b == Truth::no) return Truth::no;
    return Truth::unknown;
}

inline Truth certainly(bool b) { return b ? Truth::yes : Truth::no; }

}  // namespace asterism::oracle
