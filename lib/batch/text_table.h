// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <cstring>
#include <string>
#include <string_view>
#include <vector>

namespace asterism::batch {

/// What short texts turned out to mean, remembered: an open hash table that is only ever added to
/// and never grows past its bounds.
template <class T>
class TextTable {
public:
    static constexpr std::size_t most_entries = 1u << 14;
    static constexpr std::size_t most_text = 1u << 19;
    static constexpr std::size_t longest_text = 200;

    TextTable() : slots_(64) {}

    /// The value remembered for a text, or null. Valid until the next `add`.
    T const* find(std::string_view text) const {
        auto const hash = hash_of(text);
        for (auto at = hash & mask();; at = (at + 1) & mask()) {
            auto const& slot = slots_[at];
            if (slot.record == 0) return nullptr;
            if (slot.hash != hash) continue;
            auto const record = load_record(slot.record);
            if (same({texts_.data() + slot.record + sizeof record, record.size}, text))
                return &values_[record.value];
        }
    }

    /// Remembers a text that is not there yet, or forgets to when there is no room.
    void add(std::string_view text, T value) {
        if (text.size() > longest_text || values_.size() >= most_entries ||
            texts_.size() + text.size() > most_text)
            return;
        if (values_.size() * 2 >= slots_.size()) grow();
        place({hash_of(text), static_cast<std::uint32_t>(texts_.size())});
        Record const record{static_cast<std::uint32_t>(text.size()),
                            static_cast<std::uint32_t>(values_.size())};
        texts_.append(sizeof record, '\0');
        std::memcpy(texts_.data() + texts_.size() - sizeof record, &record, sizeof record);
        texts_.append(text);
        values_.push_back(std::move(value));
    }

private:
    /// Kept small, so that many stay near the processor.
    struct Slot {
        std::uint32_t hash = 0;
        std::uint32_t record = 0;  ///< where in `texts_`; 0 is an empty slot
    };
    /// Stands before each text.
    struct Record {
        std::uint32_t size = 0;
        std::uint32_t value = 0;  ///< position in `values_`
    };

    std::size_t mask() const { return slots_.size() - 1; }
    Record load_record(std::size_t at) const {
        Record record;
        std::memcpy(&record, texts_.data() + at, sizeof record);
        return record;
    }

    static std::uint64_t load(char const* at) {
        std::uint64_t word = 0;
        std::memcpy(&word, at, 8);
        return word;
    }

    /// Up to eight bytes as a number; different texts of one length give different numbers.
    static std::uint64_t load_short(char const* at, std::size_t size) {
        std::uint32_t first = 0, last = 0;
        if (size >= 4) {
            std::memcpy(&first, at, 4);
            std::memcpy(&last, at + size - 4, 4);
            return static_cast<std::uint64_t>(first) << 32 | last;
        }
        std::uint64_t word = 0;
        for (std::size_t i = 0; i < size; ++i) word = word << 8 | static_cast<unsigned char>(at[i]);
        return word;
    }

    static constexpr std::uint64_t odd = 0x9E3779B97F4A7C15ull;

    /// Every bit comes to bear on the upper half of the product, those of the last character too.
    static std::uint64_t mix(std::uint64_t word) { return (word ^ word >> 32) * odd; }

    /// Eight bytes at a time, the last ones overlapping; any spread will do, texts are compared
    /// too.
    static std::uint32_t hash_of(std::string_view text) {
        auto const size = text.size();
        std::uint64_t hash = size * odd;
        if (size < 8) {
            hash = mix(hash ^ load_short(text.data(), size));
        } else {
            for (std::size_t at = 0; at + 8 < size; at += 8)
                hash = mix(hash ^ load(text.data() + at));
            hash = mix(hash ^ load(text.data() + size - 8));
        }
        return static_cast<std::uint32_t>(hash >> 32);
    }

    static bool same(std::string_view a, std::string_view b) {
        auto const size = a.size();
        if (size != b.size()) return false;
        if (size < 8) return load_short(a.data(), size) == load_short(b.data(), size);
        auto differs = load(a.data() + size - 8) ^ load(b.data() + size - 8);
        for (std::size_t at = 0; at + 8 < size; at += 8)
            differs |= load(a.data() + at) ^ load(b.data() + at);
        return differs == 0;
    }

    void place(Slot const& slot) {
        auto at = slot.hash & mask();
        while (slots_[at].record != 0) at = (at + 1) & mask();
        slots_[at] = slot;
    }

    void grow() {
        std::vector<Slot> old(slots_.size() * 2);
        old.swap(slots_);
        for (auto const& slot : old) {
            if (slot.record != 0) place(slot);
        }
    }

    std::vector<Slot> slots_;
    std::string texts_ = std::string(8, '\0');  ///< nothing begins at 0
    std::vector<T> values_;
};

}  // namespace asterism::batch
