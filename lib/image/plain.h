// SPDX-License-Identifier: MIT
#pragma once

#include <cstring>
#include <type_traits>
#include <vector>

#include "image/archive.h"

namespace asterism::image {

/// Whether a struct is of numbers, enumerators and such structs alone, so that an image can hold it
/// as it lies in memory and a vector of it is read in one copy. `ASTERISM_PLAIN` says so of a
/// struct with gaps between its members.
template <class T>
inline constexpr bool is_plain = std::is_class_v<T>&& std::has_unique_object_representations_v<T>;

/// An archive that copies the members of one value to where they lie in it. What is in the gaps
/// between them is not copied, as it may be anything and an image is always the same.
class MemberBytes {
public:
    MemberBytes(void const* value, char* bytes)
        : value_(static_cast<char const*>(value)), bytes_(bytes) {}

    template <class... Members>
    void operator()(Members&... members) {
        (copy(members), ...);
    }

private:
    template <class Member>
    void copy(Member& member) {
        if constexpr (std::is_class_v<Member>) {
            serialize(*this, member);
        } else {
            static_assert(std::is_arithmetic_v<Member> || std::is_enum_v<Member>);
            auto const* const from = reinterpret_cast<char const*>(&member);
            std::memcpy(bytes_ + (from - value_), from, sizeof member);
        }
    }

    char const* value_;
    char* bytes_;
};

template <class T>
concept Plain = is_plain<T> && std::is_trivially_copyable_v<T>;

template <Plain T>
void save(Writer& archive, std::vector<T> const& items) {
    archive(cereal::make_size_tag(items.size()));
    for (auto item : items) {
        char bytes[sizeof(T)] = {};
        MemberBytes{&item, bytes}(item);
        archive.put(bytes, sizeof bytes);
    }
}

template <Plain T>
void load(Reader& archive, std::vector<T>& items) {
    std::size_t size = 0;
    archive(cereal::make_size_tag(size));
    auto const bytes = archive.view(size * sizeof(T));  // refused before anything is allocated
    items.resize(size);
    if (size > 0) std::memcpy(static_cast<void*>(items.data()), bytes.data(), bytes.size());
}

}  // namespace asterism::image

/// In namespace asterism, behind `ASTERISM_FIELDS` of the type.
#define ASTERISM_PLAIN(Type) \
    template <>              \
    inline constexpr bool image::is_plain<Type> = true;
