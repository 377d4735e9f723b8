// SPDX-License-Identifier: MIT
#include "memory.h"

#include <sys/mman.h>
#include <unistd.h>

#include <cstdint>
#include <cstdlib>

#ifdef __GLIBC__
#include <malloc.h>
#endif

namespace asterism::cli {

void keep_memory() {
#ifdef __GLIBC__
    constexpr int much = 32 * 1024 * 1024;
    mallopt(M_MMAP_THRESHOLD, much);
    mallopt(M_TRIM_THRESHOLD, much);
#endif
}

void expect_to_use(std::size_t bytes) {
#if defined(__GLIBC__) && defined(MADV_POPULATE_WRITE)
    // Freed at once, the block is what the next allocations are cut from. An older kernel refuses
    // the advice; then nothing is gained and nothing lost.
    auto* const block = static_cast<char*>(std::malloc(bytes));
    if (!block) return;
    auto const page = static_cast<std::uintptr_t>(sysconf(_SC_PAGESIZE));
    auto const before = reinterpret_cast<std::uintptr_t>(block) % page;
    madvise(block - before, bytes + before, MADV_POPULATE_WRITE);
    std::free(block);
#else
    static_cast<void>(bytes);
#endif
}

}  // namespace asterism::cli
