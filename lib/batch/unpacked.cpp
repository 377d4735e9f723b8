// SPDX-License-Identifier: MIT
#include <array>
#include <cstring>

#include <zlib.h>

#include "batch/line_source.h"

namespace asterism::batch {

namespace {

constexpr std::size_t packed_block = 1u << 16;
constexpr int gzip_window = 15 + 16;

/// Looks at the first two bytes, then passes bytes on as they are or unpacks them.
class Unpacker {
public:
    explicit Unpacker(ReadBytes read) : read_(std::move(read)) {}
    ~Unpacker() {
        if (packed_) inflateEnd(&stream_);
    }
    Unpacker(Unpacker const&) = delete;
    Unpacker& operator=(Unpacker const&) = delete;

    std::optional<std::size_t> operator()(char* to, std::size_t size) {
        if (!known_ && !look()) return std::nullopt;
        if (packed_) return unpack(to, size);
        if (used_ == have_) return read_(to, size);
        auto const n = std::min(size, have_ - used_);
        std::memcpy(to, input_.data() + used_, n);
        used_ += n;
        return n;
    }

    std::string const& failure() const { return failure_; }

private:
    bool look() {
        while (have_ < 2 && !ended_) {
            if (!fill()) return false;
        }
        known_ = true;
        packed_ = have_ >= 2 && input_[0] == '\x1f' && input_[1] == '\x8b';
        if (packed_ && inflateInit2(&stream_, gzip_window) != Z_OK) failure_ = "out of memory";
        return true;
    }

    bool fill() {
        auto const got = read_(input_.data() + have_, input_.size() - have_);
        if (!got) return false;
        ended_ = *got == 0;
        have_ += *got;
        return true;
    }

    bool refill() {
        used_ = have_ = 0;
        return fill();
    }

    std::optional<std::size_t> unpack(char* to, std::size_t size) {
        stream_.next_out = reinterpret_cast<Bytef*>(to);
        stream_.avail_out = static_cast<uInt>(size);
        while (stream_.avail_out == size && failure_.empty()) {
            if (used_ == have_ && !ended_ && !refill()) return std::nullopt;
            if (used_ == have_) {
                if (!between_members_) failure_ = "the gzip data ends too early";
                break;
            }
            step();
        }
        return size - stream_.avail_out;
    }

    void step() {
        if (between_members_) {
            inflateReset(&stream_);
            between_members_ = false;
        }
        stream_.next_in = reinterpret_cast<Bytef*>(input_.data() + used_);
        stream_.avail_in = static_cast<uInt>(have_ - used_);
        auto const status = inflate(&stream_, Z_NO_FLUSH);
        used_ = have_ - stream_.avail_in;
        if (status == Z_STREAM_END)
            between_members_ = true;
        else if (status != Z_OK && status != Z_BUF_ERROR)
            failure_ = "the gzip data is damaged";
    }

    ReadBytes read_;
    std::array<char, packed_block> input_{};
    std::size_t have_ = 0;
    std::size_t used_ = 0;
    z_stream stream_{};
    bool known_ = false;
    bool packed_ = false;
    bool ended_ = false;
    bool between_members_ = false;
    std::string failure_;
};

}  // namespace

Unpacked unpacked(ReadBytes read) {
    auto unpacker = std::make_shared<Unpacker>(std::move(read));
    return {[unpacker](char* to, std::size_t size) { return (*unpacker)(to, size); },
            [unpacker] { return unpacker->failure(); }};
}

}  // namespace asterism::batch
