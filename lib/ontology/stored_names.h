// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <mutex>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace asterism {

/// The names of a NameIndex as bytes that can be searched where they stand: reading them costs
/// nothing until a name is asked for. The bytes must outlive it.
class StoredNames {
public:
    /// Folded names in ascending order with what they stand for.
    using Targets = std::vector<std::pair<std::string, std::vector<std::uint32_t>>>;

    /// Throws std::runtime_error when the bytes are not those of `pack`.
    explicit StoredNames(std::string_view bytes);
    static std::string pack(Targets const& targets, std::vector<std::string> const& printed);

    std::string_view bytes() const { return bytes_; }
    std::vector<std::uint32_t> find(std::string_view folded) const;
    Targets targets() const;
    std::vector<std::string> const& printed() const;

private:
    /// A list of byte strings: how many, where each ends, and the bytes.
    struct Strings {
        std::uint32_t count = 0;
        std::string_view ends;
        std::string_view text;

        std::uint32_t begin(std::uint32_t index) const;
        std::uint32_t end(std::uint32_t index) const;
        std::string_view at(std::uint32_t index) const;
    };

    static void pack(std::string& bytes, std::vector<std::string> const& strings);
    static Strings unpack(std::string_view& rest);
    std::vector<std::uint32_t> ids(std::uint32_t index) const;

    std::string_view bytes_;
    Strings keys_;
    Strings ids_;  ///< parallel to the keys: four bytes a target
    Strings printed_;
    mutable std::once_flag unpacked_;
    mutable std::vector<std::string> printed_list_;
};

}  // namespace asterism
