// SPDX-License-Identifier: MIT
#include "base/digest.h"

#include <array>
#include <memory>
#include <stdexcept>

#include <fmt/format.h>
#include <openssl/evp.h>

namespace asterism {

namespace {

void update(EVP_MD_CTX* context, std::string_view text) {
    // A length before each text keeps ("ab", "c") and ("a", "bc") apart.
    auto const length = fmt::format("{}:", text.size());
    if (EVP_DigestUpdate(context, length.data(), length.size()) != 1 ||
        EVP_DigestUpdate(context, text.data(), text.size()) != 1) {
        throw std::runtime_error("SHA-256 failed");
    }
}

}  // namespace

std::string digest(std::vector<SourcePtr> const& sources) {
    std::unique_ptr<EVP_MD_CTX, decltype(&EVP_MD_CTX_free)> const context(EVP_MD_CTX_new(),
                                                                          &EVP_MD_CTX_free);
    if (!context || EVP_DigestInit_ex(context.get(), EVP_sha256(), nullptr) != 1) {
        throw std::runtime_error("SHA-256 is not available");
    }
    for (auto const& source : sources) update(context.get(), source->text());
    std::array<unsigned char, EVP_MAX_MD_SIZE> bytes{};
    unsigned size = 0;
    EVP_DigestFinal_ex(context.get(), bytes.data(), &size);
    return fmt::format("{:02x}", fmt::join(bytes.begin(), bytes.begin() + size, ""));
}

}  // namespace asterism
