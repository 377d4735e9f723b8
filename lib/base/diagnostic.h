// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/source.h"

namespace asterism {

enum class Severity { error, warning, note };

std::string_view to_text(Severity severity);

/// Another place that a diagnostic speaks of, such as the first of two contradicting statements.
struct Related {
    Span span;
    std::string message;
};

/// Something wrong (or noteworthy) in what a person wrote. Messages are lower case without a final
/// stop, with the person's own text in backticks; `help` carries the nearest known name or the way
/// out.
struct Diagnostic {
    std::string code;
    Severity severity = Severity::error;
    std::string message;
    Span span;
    std::vector<Related> related;
    std::string help;
};

/// Gathers diagnostics so that one run reports every problem.
class Diagnostics {
public:
    void add(Diagnostic diagnostic);
    void error(std::string_view code, Span span, std::string message, std::string help = {});
    void warning(std::string_view code, Span span, std::string message, std::string help = {});
    void note(std::string_view code, Span span, std::string message, std::string help = {});
    void append(Diagnostics const& other);

    bool has_errors() const;
    bool empty() const { return all_.empty(); }
    /// Everything gathered, ordered by place, then code, then message; each once.
    std::vector<Diagnostic> sorted() const;

private:
    std::vector<Diagnostic> all_;
};

}  // namespace asterism
