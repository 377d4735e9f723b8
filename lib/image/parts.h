// SPDX-License-Identifier: MIT
#pragma once

#include <memory>

#include "base/lazy_list.h"
#include "image/archive.h"

namespace asterism::image {

/// Pieces of an image that stand one after the other: how many, where each ends, and the bytes.
class Parts {
public:
    Parts(std::string_view ends, std::string_view bytes) : ends_(ends), bytes_(bytes) {}

    std::size_t size() const { return ends_.size() / sizeof(std::uint32_t); }
    /// Throws BadImage when the part does not stand where it should.
    std::string_view at(std::size_t index) const;

private:
    std::size_t end(std::size_t index) const;

    std::string_view ends_;
    std::string_view bytes_;
};

/// Throws BadImage when the parts are not all there.
Parts read_parts(Reader& archive);

/// Writes the frame of some parts, which are put into the archive one by one.
class PartsWriter {
public:
    PartsWriter(Writer& archive, std::size_t count);
    /// What was put since the last part is the next one.
    void end_part();

private:
    Writer& archive_;
    std::size_t ends_ = 0;   ///< where the end of the next part is noted
    std::size_t begin_ = 0;  ///< where the first part begins
};

/// Reads the whole of some bytes as one thing.
template <class T>
T read_part(std::string_view bytes, Sources const& sources) {
    Reader reader(bytes, sources);
    T thing;
    reader(thing);
    if (reader.left() != 0) throw BadImage("a part of the image goes on after its end");
    return thing;
}

template <class T>
class ListMaker final : public LazyList<T>::Maker {
public:
    ListMaker(Parts parts, Sources sources)
        : LazyList<T>::Maker(parts.size()), parts_(parts), sources_(std::move(sources)) {}

private:
    T make(std::size_t index) const override { return read_part<T>(parts_.at(index), sources_); }

    Parts parts_;
    Sources sources_;
};

template <class T>
class PartMaker final : public Lazy<T>::Maker {
public:
    PartMaker(std::string_view bytes, Sources sources)
        : bytes_(bytes), sources_(std::move(sources)) {}

private:
    T make() const override { return read_part<T>(bytes_, sources_); }

    std::string_view bytes_;
    Sources sources_;
};

}  // namespace asterism::image
