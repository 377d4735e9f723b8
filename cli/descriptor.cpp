// SPDX-License-Identifier: MIT
#include "descriptor.h"

#include <cerrno>
#include <csignal>
#include <cstring>
#include <utility>

#include <fcntl.h>
#include <poll.h>
#include <sys/stat.h>
#include <unistd.h>

namespace asterism::cli {

namespace {

constexpr int new_file_mode = 0666;
constexpr int longest_wait = 100;  ///< milliseconds until a request to stop is seen

std::atomic<bool> stop{false};
static_assert(std::atomic<bool>::is_always_lock_free, "a signal handler sets it");

void ask_to_stop(int) { stop = true; }

using FileStatus = struct stat;

bool same_file(FileStatus const& a, FileStatus const& b) {
    return S_ISREG(a.st_mode) && a.st_dev == b.st_dev && a.st_ino == b.st_ino;
}

/// Opens a file; never as 0, 1 or 2, which others would take for the standard streams when those
/// were closed.
int open_file(std::string const& path, int flags) {
    int const file = ::open(path.c_str(), flags | O_CLOEXEC, new_file_mode);
    if (file < 0 || file > STDERR_FILENO) return file;
    int const moved = ::fcntl(file, F_DUPFD_CLOEXEC, STDERR_FILENO + 1);
    ::close(file);
    return moved;
}

}  // namespace

Descriptor Descriptor::to_read(std::string const& path) {
    if (path == "-") return {STDIN_FILENO, false};
    Descriptor file(open_file(path, O_RDONLY), true);
    if (file.descriptor_ < 0) file.fail();
    return file;
}

Descriptor Descriptor::to_write(std::string const& path) {
    if (path == "-") return {STDOUT_FILENO, false};
    Descriptor file(open_file(path, O_WRONLY | O_CREAT | O_TRUNC), true);
    if (file.descriptor_ < 0) file.fail();
    return file;
}

Descriptor::Descriptor(Descriptor&& other) noexcept
    : descriptor_(std::exchange(other.descriptor_, -1)),
      own_(other.own_),
      error_(std::move(other.error_)) {}

Descriptor::~Descriptor() { close(); }

bool Descriptor::fail() {
    error_ = std::strerror(errno);
    return false;
}

std::optional<std::size_t> Descriptor::read(char* to, std::size_t size,
                                            std::atomic<bool> const& stop_flag) {
    if (!error_.empty()) return std::nullopt;  // poll would wait for ever on what was never opened
    while (true) {
        if (stop_flag) return std::nullopt;
        // The signal may have come to another thread, or just before now: never wait for long.
        pollfd waiting{descriptor_, POLLIN, 0};
        auto const ready = ::poll(&waiting, 1, longest_wait);
        if (ready == 0 || (ready < 0 && errno == EINTR)) continue;
        auto const got = ::read(descriptor_, to, size);
        if (got >= 0) return static_cast<std::size_t>(got);
        if (errno == EINTR) continue;
        fail();
        return std::nullopt;
    }
}

bool Descriptor::write(std::string_view text) {
    while (!text.empty()) {
        auto const done = ::write(descriptor_, text.data(), text.size());
        if (done < 0 && errno == EINTR) continue;
        if (done < 0) return fail();
        text.remove_prefix(static_cast<std::size_t>(done));
    }
    return true;
}

bool Descriptor::is(std::string const& path) const {
    FileStatus own{}, theirs{};
    return ::fstat(descriptor_, &own) == 0 && ::stat(path.c_str(), &theirs) == 0 &&
           same_file(own, theirs);
}

bool Descriptor::is(Descriptor const& other) const {
    FileStatus own{}, theirs{};
    return ::fstat(descriptor_, &own) == 0 && ::fstat(other.descriptor_, &theirs) == 0 &&
           same_file(own, theirs);
}

bool Descriptor::close() {
    if (!own_ || descriptor_ < 0) return true;
    return ::close(std::exchange(descriptor_, -1)) == 0 || fail();
}

std::atomic<bool> const& stop_asked() { return stop; }

void watch_signals() {
    struct sigaction action {};
    action.sa_handler = ask_to_stop;  // without SA_RESTART: a read that waits is woken
    sigaction(SIGINT, &action, nullptr);
    sigaction(SIGTERM, &action, nullptr);
}

}  // namespace asterism::cli
