// SPDX-License-Identifier: MIT
#pragma once

#include <cstring>
#include <string>
#include <string_view>
#include <type_traits>
#include <unordered_map>
#include <vector>

#include <cereal/cereal.hpp>

#include "base/source.h"
#include "image/image.h"

/// Of functions that are called for every number of an image: a call would cost more than they do.
#if defined(__GNUC__)
#define ASTERISM_IN_PLACE [[gnu::always_inline]] inline
#else
#define ASTERISM_IN_PLACE inline
#endif

namespace asterism::image {

/// Appends values to bytes in the machine's own order: an image never leaves the program that it
/// was built into.
class Writer : public cereal::OutputArchive<Writer, cereal::AllowEmptyClassElision> {
public:
    Writer() : OutputArchive(this) {}

    void put(void const* data, std::size_t size) {
        bytes_.append(static_cast<char const*>(data), size);
    }
    /// The number of a source, counted in the order of first use; 0 is no source.
    std::uint16_t number_of(SourcePtr const& source) {
        if (!source) return 0;
        auto const next = static_cast<std::uint16_t>(names_.size() + 1);
        auto const [known, fresh] = numbers_.try_emplace(source->name(), next);
        if (fresh) names_.push_back(source->name());
        return known->second;
    }
    std::vector<std::string> const& names() const { return names_; }
    std::string const& bytes() const { return bytes_; }
    /// Overwrites bytes put before, as for a size that is known only later.
    void patch(std::size_t at, std::uint32_t number) {
        std::memcpy(bytes_.data() + at, &number, sizeof number);
    }

private:
    std::string bytes_;
    std::vector<std::string> names_;
    std::unordered_map<std::string, std::uint16_t> numbers_;
};

/// The sources that places stand in, in the order of their numbers from 1 on.
using Sources = std::shared_ptr<std::vector<SourcePtr> const>;

/// Reads what a Writer wrote; throws BadImage at the end of the bytes.
class Reader : public cereal::InputArchive<Reader, cereal::AllowEmptyClassElision> {
public:
    explicit Reader(std::string_view bytes, Sources sources = {})
        : InputArchive(this),
          next_(bytes.data()),
          end_(next_ + bytes.size()),
          sources_(std::move(sources)) {}

    ASTERISM_IN_PLACE void take(void* data, std::size_t size) {
        auto const bytes = view(size);
        if (size > 0) std::memcpy(data, bytes.data(), size);  // nothing has no place in memory
    }
    /// The next bytes where they stand.
    ASTERISM_IN_PLACE std::string_view view(std::size_t size) {
        if (size > left()) ends_too_early();
        auto const* const begin = next_;
        next_ += size;
        return {begin, size};
    }
    std::size_t left() const { return static_cast<std::size_t>(end_ - next_); }
    void set_sources(Sources sources) { sources_ = std::move(sources); }
    Sources const& sources() const { return sources_; }
    SourcePtr const& source(std::uint16_t number) const {
        static SourcePtr const none;
        if (number == 0) return none;
        if (!sources_ || number > sources_->size()) unknown_source();
        return (*sources_)[number - 1u];
    }

private:
    /// Apart, so that reading a number stays short enough to be done in place.
    [[noreturn]] static void ends_too_early() { throw BadImage("the image ends too early"); }
    [[noreturn]] static void unknown_source() {
        throw BadImage("the image names a file that it does not have");
    }

    char const* next_;
    char const* end_;
    Sources sources_;
};

template <class T>
concept Number = std::is_arithmetic_v<T>;

template <Number T>
void CEREAL_SAVE_FUNCTION_NAME(Writer& archive, T const& value) {
    archive.put(&value, sizeof value);
}
template <Number T>
void CEREAL_LOAD_FUNCTION_NAME(Reader& archive, T& value) {
    archive.take(&value, sizeof value);
}

template <class T>
void CEREAL_SAVE_FUNCTION_NAME(Writer& archive, cereal::BinaryData<T> const& data) {
    archive.put(data.data, data.size);
}
template <class T>
void CEREAL_LOAD_FUNCTION_NAME(Reader& archive, cereal::BinaryData<T>& data) {
    archive.take(data.data, data.size);
}

/// Names that cereal gives to parts are not stored.
template <class T>
void CEREAL_SAVE_FUNCTION_NAME(Writer& archive, cereal::NameValuePair<T> const& pair) {
    archive(pair.value);
}
template <class T>
void CEREAL_LOAD_FUNCTION_NAME(Reader& archive, cereal::NameValuePair<T>& pair) {
    archive(pair.value);
}

/// Sizes take four bytes; one that is larger than what is left of the image is refused before
/// anything is allocated for it.
template <class T>
void CEREAL_SAVE_FUNCTION_NAME(Writer& archive, cereal::SizeTag<T> const& tag) {
    archive(static_cast<std::uint32_t>(tag.size));
}
template <class T>
void CEREAL_LOAD_FUNCTION_NAME(Reader& archive, cereal::SizeTag<T>& tag) {
    std::uint32_t size = 0;
    archive(size);
    if (size > archive.left()) throw BadImage("the image announces more than it holds");
    tag.size = size;
}

}  // namespace asterism::image

CEREAL_SETUP_ARCHIVE_TRAITS(asterism::image::Reader, asterism::image::Writer)

/// `ASTERISM_FIELDS(Type, a, b, c)` in the type's namespace: its members in their order, all of
/// them. The names bind to the members, so that a list too short or too long does not compile.
#define ASTERISM_FIELDS(Type, ...)                  \
    template <class Archive>                        \
    void serialize(Archive& archive, Type& value) { \
        auto& [__VA_ARGS__] = value;                \
        archive(__VA_ARGS__);                       \
    }
