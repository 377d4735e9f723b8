# SPDX-License-Identifier: MIT
"""What can be read off a page without a browser: its elements, and the contrast of its colours."""

import re
from html.parser import HTMLParser

VOID = {"meta", "img", "br", "hr", "link", "input"}


class Reader(HTMLParser):
    """Reads a page strictly: what is opened is closed, in order, and nothing is left over."""

    def __init__(self, text: str):
        super().__init__(convert_charrefs=True)
        self.open, self.problems, self.elements, self.texts = [], [], [], []
        self.feed(text)
        self.close()
        self.problems += [f"<{tag}> is never closed" for tag in self.open]

    def handle_starttag(self, tag, attrs):
        names = [name for name, _ in attrs]
        if len(names) != len(set(names)):
            self.problems.append(f"<{tag}> has an attribute twice")
        self.elements.append((tag, dict(attrs)))
        if tag not in VOID:
            self.open.append(tag)

    def handle_endtag(self, tag):
        if not self.open or self.open.pop() != tag:
            self.problems.append(f"</{tag}> closes nothing that is open")

    def handle_data(self, data):
        self.texts.append(data)

    def all(self, tag: str) -> list[dict]:
        return [attrs for name, attrs in self.elements if name == tag]

    def values(self, attribute: str) -> list[str]:
        return [attrs[attribute] for _, attrs in self.elements if attribute in attrs]


def contrast(a: str, b: str) -> float:
    """The contrast ratio of WCAG 2 between two colours such as `#fff` and `#1d1b18`."""
    high, low = sorted((_luminance(a), _luminance(b)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def _luminance(colour: str) -> float:
    digits = colour.lstrip("#")
    if len(digits) == 3:
        digits = "".join(d * 2 for d in digits)
    linear = []
    for at in (0, 2, 4):
        part = int(digits[at:at + 2], 16) / 255
        linear.append(part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4)
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def colour_schemes(page: str) -> list[dict[str, str]]:
    """Colours by name in light, dark and print: each :root block over the ones before it."""
    style = page[page.index("<style>"):page.index("</style>")]
    colours, found = {}, []
    for block in re.findall(r":root\s*\{(.*?)\}", style, re.S):
        colours = {**colours, **dict(re.findall(r"--([a-z-]+):\s*(#[0-9a-fA-F]{3,6})", block))}
        found.append(colours)
    return found
