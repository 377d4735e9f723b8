// SPDX-License-Identifier: MIT
#pragma once

#include <memory>
#include <string_view>

#include "batch/fast_case.h"

namespace asterism::batch {

/// Reads the plain cases among JSON lines straight into what verdicts need. It accepts a line only
/// when the full reader would accept it without a word and mean the same; anything else, from a
/// misspelt name to a finding stated twice, it leaves to the full reader. One thread's own.
class LineReader {
public:
    /// Bytes that must be readable behind every line.
    static std::size_t padding();

    explicit LineReader(Ontology const& ontology);
    ~LineReader();

    /// False when the line is for the full reader; `baby` is then of no use.
    bool read(std::string_view line, FastCase& baby);

private:
    class Reading;
    std::unique_ptr<Reading> reading_;
};

}  // namespace asterism::batch
