// SPDX-License-Identifier: MIT
#include "ontology/stored_names.h"

#include <cstring>
#include <stdexcept>

namespace asterism {

namespace {

constexpr std::size_t word_size = sizeof(std::uint32_t);

std::uint32_t word_at(std::string_view bytes, std::size_t index) {
    std::uint32_t word = 0;
    std::memcpy(&word, bytes.substr(index * word_size, word_size).data(), word_size);
    return word;
}

void append(std::string& bytes, std::size_t number) {
    auto const word = static_cast<std::uint32_t>(number);
    char raw[word_size];
    std::memcpy(raw, &word, word_size);
    bytes.append(raw, word_size);
}

std::string_view take(std::string_view& rest, std::size_t size) {
    if (size > rest.size()) throw std::runtime_error("stored names end too early");
    auto const taken = rest.substr(0, size);
    rest.remove_prefix(size);
    return taken;
}

}  // namespace

std::uint32_t StoredNames::Strings::begin(std::uint32_t index) const {
    return index == 0 ? 0 : word_at(ends, index - 1);
}

std::uint32_t StoredNames::Strings::end(std::uint32_t index) const { return word_at(ends, index); }

std::string_view StoredNames::Strings::at(std::uint32_t index) const {
    return text.substr(begin(index), end(index) - begin(index));
}

void StoredNames::pack(std::string& bytes, std::vector<std::string> const& strings) {
    append(bytes, strings.size());
    std::size_t end = 0;
    for (auto const& string : strings) append(bytes, end += string.size());
    for (auto const& string : strings) bytes += string;
}

StoredNames::Strings StoredNames::unpack(std::string_view& rest) {
    Strings strings;
    strings.count = word_at(take(rest, word_size), 0);
    strings.ends = take(rest, strings.count * word_size);
    strings.text = take(rest, strings.count == 0 ? 0 : strings.end(strings.count - 1));
    return strings;
}

std::string StoredNames::pack(Targets const& targets, std::vector<std::string> const& printed) {
    std::vector<std::string> keys, ids;
    for (auto const& [key, numbers] : targets) {
        keys.push_back(key);
        ids.emplace_back();
        for (auto const number : numbers) append(ids.back(), number);
    }
    std::string bytes;
    pack(bytes, keys);
    pack(bytes, ids);
    pack(bytes, printed);
    return bytes;
}

StoredNames::StoredNames(std::string_view bytes) : bytes_(bytes) {
    auto rest = bytes;
    keys_ = unpack(rest);
    ids_ = unpack(rest);
    printed_ = unpack(rest);
    if (!rest.empty() || ids_.count != keys_.count)
        throw std::runtime_error("stored names do not fit together");
}

std::vector<std::uint32_t> StoredNames::ids(std::uint32_t index) const {
    auto const numbers = ids_.at(index);
    std::vector<std::uint32_t> result;
    for (std::size_t i = 0; i < numbers.size() / word_size; ++i)
        result.push_back(word_at(numbers, i));
    return result;
}

std::vector<std::uint32_t> StoredNames::find(std::string_view folded) const {
    std::uint32_t low = 0, high = keys_.count;
    while (low < high) {
        auto const middle = low + (high - low) / 2;
        auto const order = keys_.at(middle).compare(folded);
        if (order == 0) return ids(middle);
        if (order < 0)
            low = middle + 1;
        else
            high = middle;
    }
    return {};
}

StoredNames::Targets StoredNames::targets() const {
    Targets result;
    for (std::uint32_t i = 0; i < keys_.count; ++i) result.emplace_back(keys_.at(i), ids(i));
    return result;
}

std::vector<std::string> const& StoredNames::printed() const {
    std::call_once(unpacked_, [this] {
        for (std::uint32_t i = 0; i < printed_.count; ++i)
            printed_list_.emplace_back(printed_.at(i));
    });
    return printed_list_;
}

}  // namespace asterism
