# SPDX-License-Identifier: MIT
"""Whether a program was built with the address sanitizer: it is then ten times as slow and needs more memory."""
from pathlib import Path


def instrumented(program):
    return b"__asan_init" in Path(program).read_bytes()
