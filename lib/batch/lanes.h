// SPDX-License-Identifier: MIT
#pragma once

#include <bit>
#include <cstddef>
#include <cstdint>

#include "base/truth.h"

namespace asterism::batch {

// How vectors are passed to functions is of no concern where all are inline.
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wpsabi"

/// A bit for each of some cases that are judged at once: a case's bit is its *lane*.
class Lanes {
public:
    static constexpr std::size_t words = 4;
    static constexpr std::size_t count = words * 64;

    /// The lanes below a number.
    static Lanes first(std::size_t lanes) {
        Lanes result;
        for (std::size_t lane = 0; lane < lanes; ++lane) result.set(lane);
        return result;
    }

    bool has(std::size_t lane) const { return (words_[lane / 64] >> lane % 64 & 1u) != 0; }
    void set(std::size_t lane) { words_[lane / 64] |= 1ull << lane % 64; }
    void put(std::size_t lane, bool value) {
        auto const at = lane / 64;
        words_[at] = (words_[at] & ~(1ull << lane % 64)) | std::uint64_t{value} << lane % 64;
    }
    /// Calls `visit` with each lane that is set, in order.
    template <class Visit>
    void each(Visit visit) const {
        for (std::size_t word = 0; word < words; ++word) {
            for (auto set = words_[word]; set != 0; set &= set - 1)
                visit(word * 64 + static_cast<std::size_t>(std::countr_zero(set)));
        }
    }

    Lanes& operator&=(Lanes const& other) { return words_ &= other.words_, *this; }
    Lanes& operator|=(Lanes const& other) { return words_ |= other.words_, *this; }
    Lanes& operator^=(Lanes const& other) { return words_ ^= other.words_, *this; }
    friend Lanes operator&(Lanes const& a, Lanes const& b) {
        auto result = a;
        return result &= b;
    }
    friend Lanes operator|(Lanes const& a, Lanes const& b) {
        auto result = a;
        return result |= b;
    }
    friend Lanes operator~(Lanes const& a) {
        Lanes result;
        result.words_ = ~a.words_;
        return result;
    }

private:
    /// A vector, for which the compiler uses the widest instructions there are.
    using Words [[gnu::vector_size(words * sizeof(std::uint64_t))]] = std::uint64_t;

    Words words_{};
};

/// A truth in each lane. Both halves of a gate without negations hang on the same halves of its
/// inputs alone, so each is plain arithmetic of bits.
struct alignas(64) LaneTruth {  // of one line of the processor's caches
    Lanes surely;               ///< `yes`
    Lanes possibly;             ///< `yes` or `unknown`

    static LaneTruth all_yes() { return {~Lanes{}, ~Lanes{}}; }

    Truth at(std::size_t lane) const {
        return static_cast<Truth>((surely.has(lane) ? 1 : 0) + (possibly.has(lane) ? 1 : 0));
    }
    void put(std::size_t lane, Truth value) {
        surely.put(lane, value == Truth::yes);
        possibly.put(lane, value != Truth::no);
    }
    Lanes unknown() const { return possibly & ~surely; }
    /// Takes another truth's value in some lanes.
    void replace(Lanes const& lanes, LaneTruth const& other) {
        surely = (surely & ~lanes) | (other.surely & lanes);
        possibly = (possibly & ~lanes) | (other.possibly & lanes);
    }

    LaneTruth& operator&=(LaneTruth const& other) {
        surely &= other.surely;
        possibly &= other.possibly;
        return *this;
    }
    LaneTruth& operator|=(LaneTruth const& other) {
        surely |= other.surely;
        possibly |= other.possibly;
        return *this;
    }
    friend LaneTruth operator&(LaneTruth const& a, LaneTruth const& b) {
        auto result = a;
        return result &= b;
    }
    friend LaneTruth operator!(LaneTruth const& a) { return {~a.possibly, ~a.surely}; }
};

#pragma GCC diagnostic pop

}  // namespace asterism::batch
