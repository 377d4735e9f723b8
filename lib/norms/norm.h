// SPDX-License-Identifier: MIT
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <tl/expected.hpp>

#include "norms/description.h"
#include "norms/scale.h"

namespace asterism::norms {

/// A description joined with its table, checked and ready to be read.
struct Norm {
    NormDescription description{};
    /// Nothing for printed centiles and plain cut-offs, and for a table that the user has not
    /// supplied.
    std::optional<Scale> scale{};

    [[nodiscard]] bool covers(std::string_view measure) const;
    /// True when the table is for the user to supply and was not.
    [[nodiscard]] bool lacks_table() const;
    [[nodiscard]] Clock clock() const;
    /// Unit in which the norm has this measure.
    [[nodiscard]] std::string const& unit(std::string_view measure) const;
};

/// Something wrong with a description or with the text of its table.
struct NormError {
    std::string norm{};
    std::string table{};  ///< empty: the fault is in the description
    int line = 0;         ///< line of the table, else 0
    std::string message{};

    friend bool operator==(NormError const&, NormError const&) = default;
};
using NormErrors = std::vector<NormError>;

/// Texts of tables by name.
using TableTexts = std::map<std::string, std::string, std::less<>>;

/// True for the kinds whose numbers stand in a table.
[[nodiscard]] bool has_table(Kind kind);

/// What a description says wrongly or leaves out, all of it.
[[nodiscard]] NormErrors check_description(NormDescription const& description);

/// Joins a description with its table. Errors: those of check_description, a bundled table that is
/// missing, everything wrong in the table, a measure that the table lacks.
[[nodiscard]] tl::expected<Norm, NormErrors> make_norm(NormDescription description,
                                                       TableTexts const& tables);

}  // namespace asterism::norms
