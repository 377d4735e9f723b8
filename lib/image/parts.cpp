// SPDX-License-Identifier: MIT
#include "image/parts.h"

namespace asterism::image {

namespace {

constexpr auto width = sizeof(std::uint32_t);

}  // namespace

std::size_t Parts::end(std::size_t index) const {
    std::uint32_t number = 0;
    std::memcpy(&number, ends_.data() + index * width, width);
    return number;
}

std::string_view Parts::at(std::size_t index) const {
    auto const from = index == 0 ? 0 : end(index - 1);
    auto const to = end(index);
    if (from > to || to > bytes_.size())
        throw BadImage("a part of the image does not stand where it should");
    return bytes_.substr(from, to - from);
}

Parts read_parts(Reader& archive) {
    std::uint32_t count = 0;
    archive(count);
    auto const ends = archive.view(count * width);
    std::uint32_t size = 0;
    archive(size);
    return {ends, archive.view(size)};
}

PartsWriter::PartsWriter(Writer& archive, std::size_t count)
    : archive_(archive), ends_(archive.bytes().size() + width) {
    archive(static_cast<std::uint32_t>(count));
    for (std::size_t i = 0; i < count + 1; ++i) archive(std::uint32_t{0});
    begin_ = archive.bytes().size();
}

void PartsWriter::end_part() {
    auto const size = static_cast<std::uint32_t>(archive_.bytes().size() - begin_);
    archive_.patch(ends_, size);
    ends_ += width;
    archive_.patch(begin_ - width, size);
}

}  // namespace asterism::image
