// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <vector>

#include "base/diagnostic.h"
#include "compile/compiled.h"

namespace asterism {

struct CompiledOutcome {
    enum class Kind : std::uint8_t {
        suggest,
        never,
        holds,
        never_met,
        keeps_urgency,
        keeps_services
    };

    Kind kind = Kind::suggest;
    std::vector<ServiceId> services;
    Urgency at_least = Urgency::routine;
    Literal holds;
};

/// A promise with its names looked up and its conditions joined to the circuit.
struct CompiledPromise {
    std::uint32_t syntax = 0;  ///< index into the rulebook's promises
    std::optional<Literal> when;
    std::vector<FindingId> findings;  ///< of the class that `for-each` or `adding` names
    bool adding = false;
    std::vector<CompiledOutcome> then;
};

/// The book's promises, over a copy of the book whose circuit has their conditions too.
struct Promises {
    CompiledRulebook book;
    std::vector<CompiledPromise> all;

    PromiseSyntax const& syntax(CompiledPromise const& promise) const {
        return book.book->promises[promise.syntax];
    }
};

/// Looks up the names of every promise and checks that its parts go together. Nothing is returned
/// when there are errors; all of them are reported.
std::optional<Promises> compile_promises(CompiledRulebook const& book, Diagnostics& diagnostics);

}  // namespace asterism
