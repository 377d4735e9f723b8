// SPDX-License-Identifier: MIT
#pragma once

#include <atomic>
#include <optional>
#include <string>
#include <string_view>

namespace asterism::cli {

/// An open file of the system, read and written without a buffer of its own so that no error is
/// lost. Closes what it opened.
class Descriptor {
public:
    /// Standard input or output for `-`. `error` tells why when the file cannot be opened.
    static Descriptor to_read(std::string const& path);
    static Descriptor to_write(std::string const& path);

    Descriptor(Descriptor&& other) noexcept;
    Descriptor(Descriptor const&) = delete;
    Descriptor& operator=(Descriptor const&) = delete;
    Descriptor& operator=(Descriptor&&) = delete;
    ~Descriptor();

    std::string const& error() const { return error_; }
    /// Bytes read, 0 at the end; nothing on an error, or when a signal came and `stop` is set.
    std::optional<std::size_t> read(char* to, std::size_t size, std::atomic<bool> const& stop);
    /// All of it, or false.
    bool write(std::string_view text);
    /// Whether it is the regular file that stands under this path.
    bool is(std::string const& path) const;
    bool is(Descriptor const& other) const;
    /// False when the system had kept back an error until now.
    bool close();

private:
    Descriptor(int descriptor, bool own) : descriptor_(descriptor), own_(own) {}
    bool fail();

    int descriptor_ = -1;
    bool own_ = false;
    std::string error_;
};

/// Set by SIGINT and SIGTERM once `watch_signals` was called.
std::atomic<bool> const& stop_asked();
void watch_signals();

}  // namespace asterism::cli
