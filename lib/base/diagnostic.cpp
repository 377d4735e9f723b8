// SPDX-License-Identifier: MIT
#include "base/diagnostic.h"

#include <algorithm>
#include <tuple>

namespace asterism {

namespace {

bool less(Diagnostic const& a, Diagnostic const& b) {
    if (before(a.span, b.span)) return true;
    if (before(b.span, a.span)) return false;
    return std::tie(a.severity, a.code, a.message) < std::tie(b.severity, b.code, b.message);
}

bool same(Diagnostic const& a, Diagnostic const& b) { return !less(a, b) && !less(b, a); }

}  // namespace

std::string_view to_text(Severity severity) {
    switch (severity) {
        case Severity::error: return "error";
        case Severity::warning: return "warning";
        case Severity::note: return "note";
    }
    return "error";
}

void Diagnostics::add(Diagnostic diagnostic) { all_.push_back(std::move(diagnostic)); }

void Diagnostics::error(std::string_view code, Span span, std::string message, std::string help) {
    add({std::string(code),
         Severity::error,
         std::move(message),
         std::move(span),
         {},
         std::move(help)});
}

void Diagnostics::warning(std::string_view code, Span span, std::string message, std::string help) {
    add({std::string(code),
         Severity::warning,
         std::move(message),
         std::move(span),
         {},
         std::move(help)});
}

void Diagnostics::note(std::string_view code, Span span, std::string message, std::string help) {
    add({std::string(code),
         Severity::note,
         std::move(message),
         std::move(span),
         {},
         std::move(help)});
}

void Diagnostics::append(Diagnostics const& other) {
    all_.insert(all_.end(), other.all_.begin(), other.all_.end());
}

bool Diagnostics::has_errors() const {
    return std::any_of(all_.begin(), all_.end(),
                       [](Diagnostic const& d) { return d.severity == Severity::error; });
}

std::vector<Diagnostic> Diagnostics::sorted() const {
    auto result = all_;
    std::stable_sort(result.begin(), result.end(), less);
    result.erase(std::unique(result.begin(), result.end(), same), result.end());
    return result;
}

}  // namespace asterism
