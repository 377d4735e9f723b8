// SPDX-License-Identifier: MIT
#include <array>
#include <memory>

#include <fmt/format.h>
#include <zlib.h>

#include "ontology/hpo.h"

namespace asterism {

namespace {

constexpr int window_bits_for_gzip = 15 + 16;
constexpr std::size_t block_size = 1u << 16;

struct EndInflate {
    void operator()(z_stream* stream) const { inflateEnd(stream); }
};

}  // namespace

bool is_gzip(std::string_view bytes) { return bytes.starts_with("\x1f\x8b"); }

Parsed<std::string> unpack_gzip(std::string_view bytes, std::size_t most_bytes) {
    z_stream stream{};
    if (inflateInit2(&stream, window_bits_for_gzip) != Z_OK) throw std::bad_alloc();
    std::unique_ptr<z_stream, EndInflate> const end(&stream);
    // zlib does not write to its input, but takes it without const.
    stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(bytes.data()));
    stream.avail_in = static_cast<uInt>(bytes.size());
    std::string text;
    std::array<char, block_size> block{};
    int state = Z_OK;
    while (state == Z_OK) {
        stream.next_out = reinterpret_cast<Bytef*>(block.data());
        stream.avail_out = block.size();
        state = inflate(&stream, Z_NO_FLUSH);
        text.append(block.data(), block.size() - stream.avail_out);
        if (text.size() > most_bytes)
            return tl::make_unexpected(
                fmt::format("unpacked it is larger than {} MiB", most_bytes >> 20));
    }
    if (state == Z_STREAM_END) return text;
    return tl::make_unexpected("the gzip data are damaged or end too early");
}

}  // namespace asterism
