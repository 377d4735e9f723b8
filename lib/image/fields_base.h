// SPDX-License-Identifier: MIT
#pragma once

#include <chrono>

#include <cereal/types/common.hpp>
#include <cereal/types/map.hpp>
#include <cereal/types/optional.hpp>
#include <cereal/types/string.hpp>
#include <cereal/types/unordered_map.hpp>
#include <cereal/types/variant.hpp>
#include <cereal/types/vector.hpp>

#include "base/time.h"
#include "image/archive.h"
#include "image/parts.h"
#include "image/plain.h"

namespace asterism::image {

inline void save(Writer& archive, std::chrono::hours const& hours) {
    archive(static_cast<std::int64_t>(hours.count()));
}
inline void load(Reader& archive, std::chrono::hours& hours) {
    std::int64_t count = 0;
    archive(count);
    hours = std::chrono::hours(count);
}

}  // namespace asterism::image

namespace asterism {

inline void save(image::Writer& archive, SourcePtr const& source) {
    archive(archive.number_of(source));
}
inline void load(image::Reader& archive, SourcePtr& source) {
    std::uint16_t number = 0;
    archive(number);
    source = archive.source(number);
}

/// The items stay where they are until they are asked for.
template <class T>
void save(image::Writer& archive, LazyList<T> const& list) {
    image::PartsWriter parts(archive, list.size());
    for (auto const& item : list) {
        archive(item);
        parts.end_part();
    }
}
template <class T>
void load(image::Reader& archive, LazyList<T>& list) {
    auto const parts = image::read_parts(archive);
    if (parts.size() == 0) return;
    list = LazyList<T>::deferred(
        std::make_shared<image::ListMaker<T> const>(parts, archive.sources()));
}

ASTERISM_FIELDS(Span, source, begin, end)
ASTERISM_FIELDS(Word, text, span)
ASTERISM_FIELDS(Duration, hours)

}  // namespace asterism
