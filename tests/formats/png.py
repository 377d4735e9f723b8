# SPDX-License-Identifier: MIT
"""Reads the pictures that a browser takes: 8-bit RGB or RGBA, not interlaced."""

import struct
import zlib
from pathlib import Path


class Picture:
    """Rows of bytes, `depth` of them a pixel."""

    def __init__(self, path: Path):
        data = Path(path).read_bytes()
        if data[:8] != b"\x89PNG\r\n\x1a\n":
            raise ValueError(f"{path} is not a PNG")
        body = b""
        for kind, content in _chunks(data):
            if kind == b"IHDR":
                self.width, self.height, bits, colour, _, _, interlaced = struct.unpack(
                    ">IIBBBBB", content)
                if bits != 8 or colour not in (2, 6) or interlaced:
                    raise ValueError(f"{path}: a kind of PNG that is not read here")
                self.depth = 3 if colour == 2 else 4
            elif kind == b"IDAT":
                body += content
        self.rows = _unfiltered(zlib.decompress(body), self.width * self.depth, self.depth)

    def pixel(self, x: int, y: int) -> tuple[int, int, int]:
        at = x * self.depth
        return tuple(self.rows[y][at:at + 3])

    def is_blank_row(self, y: int) -> bool:
        """All pixels of the row have the colour of its first one."""
        row = self.rows[y]
        return row == row[:self.depth] * self.width


def _chunks(data: bytes):
    at = 8
    while at < len(data):
        length, kind = struct.unpack(">I4s", data[at:at + 8])
        yield kind, data[at + 8:at + 8 + length]
        at += 12 + length


def _unfiltered(raw: bytes, stride: int, depth: int) -> list[bytes]:
    rows, previous = [], bytearray(stride)
    for start in range(0, len(raw), stride + 1):
        kind, row = raw[start], bytearray(raw[start + 1:start + 1 + stride])
        _undo(kind, row, previous, depth)
        rows.append(bytes(row))
        previous = row
    return rows


def _undo(kind: int, row: bytearray, above: bytearray, depth: int) -> None:
    if kind == 2:
        for i, up in enumerate(above):
            row[i] = (row[i] + up) & 255
        return
    for i in range(len(row) if kind else 0):
        left = row[i - depth] if i >= depth else 0
        corner = above[i - depth] if i >= depth else 0
        guess = {1: left, 3: (left + above[i]) // 2, 4: _paeth(left, above[i], corner)}[kind]
        row[i] = (row[i] + guess) & 255


def _paeth(left: int, up: int, corner: int) -> int:
    guess = left + up - corner
    return min((abs(guess - left), 0, left), (abs(guess - up), 1, up),
               (abs(guess - corner), 2, corner))[2]
