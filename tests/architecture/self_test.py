#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Plants small trees with one fault each and expects the checker to name that fault, no other."""

import tempfile
import unittest
from pathlib import Path

from check import breaches

LICENCE = "// SPDX-License-Identifier: MIT\n"
GUARD = LICENCE + "#pragma once\n"
SOUND = {
    "CMakeLists.txt": "", "README.md": "", "DEVELOPERS.md": "",
    "rules/book.yaml": "", "ontology/regions.yaml": "", "examples/quickstart.sh": "",
    ".gitignore": "", "build/CMakeCache.txt": "",
    "lib/base/span.h": GUARD + "#include <string>\n",
    "lib/yaml/node.h": GUARD + '#include "base/span.h"\n#include <yaml-cpp/yaml.h>\n',
    "lib/norms/lms.h": GUARD + '#include "base/span.h"\n#include "norms/curve.h"\n',
    "lib/norms/curve.h": GUARD,
    "lib/embedded/embedded.h": GUARD + '#include "base/span.h"\n',
    "lib/render/text.cpp": LICENCE + '#include "norms/lms.h"\n#include "yaml/node.h"\n',
    "cli/main.cpp": LICENCE + '#include "embedded/embedded.h"\n#include "table.h"\n'
                    "#include <spdlog/spdlog.h>\n#include <boost/program_options.hpp>\n",
    "cli/table.h": GUARD,
    "tests/base/span_test.cpp": LICENCE + '#include "base/span.h"\n' + "// a line of test\n" * 60,
}


def function_of(lines: int) -> str:
    """A function that is exactly `lines` long, with braces in places that mislead."""
    body = ['    char const* text = R"(} // {{{)"; // }', "    /* } */"]
    body += ["    ++count;"] * (lines - len(body) - 2)
    return "\n".join(["int longest(int count) {", *body, "}", ""])


class Planted(unittest.TestCase):
    def found_in(self, changes: dict[str, str | None], strict: bool = False) -> list[str]:
        """What the checker says of the sound tree after `changes` (None removes a file)."""
        with tempfile.TemporaryDirectory() as folder:
            for name, text in {**SOUND, **changes}.items():
                if text is not None:
                    path = Path(folder) / name
                    path.parent.mkdir(parents=True, exist_ok=True)
                    path.write_text(text, encoding="utf-8")
            return breaches(Path(folder), strict)

    def expect(self, changes: dict[str, str | None], *messages: str, strict: bool = False) -> None:
        self.assertEqual(self.found_in(changes, strict), sorted(messages))

    def test_the_sound_tree_has_no_fault(self):
        self.expect({}, strict=True)

    def test_upward_arrow(self):
        self.expect({"lib/base/up.h": GUARD + '#include "norms/lms.h"\n'},
                    "lib/base/up.h:3: `base` may not include `norms` (norms/lms.h)")

    def test_upward_arrow_in_angle_brackets_or_by_relative_path(self):
        self.expect({"lib/base/up.h": GUARD + "#  include <norms/lms.h>\n"
                     '#include "../norms/lms.h"\n'},
                    "lib/base/up.h:3: `base` may not include `norms` (norms/lms.h)",
                    "lib/base/up.h:4: `base` may not include `norms` (../norms/lms.h)")

    def test_norms_stand_on_base_alone(self):
        self.expect({"lib/norms/read.cpp": LICENCE + '#include "yaml/node.h"\n'},
                    "lib/norms/read.cpp:2: `norms` may not include `yaml` (yaml/node.h)")

    def test_no_room_includes_render_embedded_or_cli(self):
        self.expect({"lib/render/text.h": GUARD,
                     "lib/audit/audit.cpp": LICENCE + '#include "render/text.h"\n'
                     '#include "embedded/embedded.h"\n#include "cli/table.h"\n'},
                    "lib/audit/audit.cpp:2: `audit` may not include `render` (render/text.h)",
                    "lib/audit/audit.cpp:3: `audit` may not include `embedded` "
                    "(embedded/embedded.h)",
                    "lib/audit/audit.cpp:4: `audit` may not include `cli` (cli/table.h)")

    def test_embedded_stands_on_base_alone(self):
        self.expect({"lib/embedded/more.cpp": LICENCE + '#include "yaml/node.h"\n'},
                    "lib/embedded/more.cpp:2: `embedded` may not include `yaml` (yaml/node.h)")

    def test_foreign_headers_have_one_home(self):
        self.expect({"cli/options.cpp": LICENCE + "#include <yaml-cpp/yaml.h>\n",
                     "lib/base/log.cpp": LICENCE + "#include <spdlog/spdlog.h>\n"
                     "#include <boost/program_options/options_description.hpp>\n"
                     "#include <iostream>\n"},
                    "cli/options.cpp:2: only `yaml` may include yaml-cpp/yaml.h",
                    "lib/base/log.cpp:2: only `cli` may include spdlog/spdlog.h",
                    "lib/base/log.cpp:3: only `cli` may include "
                    "boost/program_options/options_description.hpp",
                    "lib/base/log.cpp:4: only `cli` may include iostream")

    def test_include_of_nothing(self):
        self.expect({"lib/yaml/lost.h": GUARD + '#include "base/lost.h"\n'},
                    "lib/yaml/lost.h:3: there is no base/lost.h")

    def test_unknown_room(self):
        self.expect({"lib/helpers/any.h": GUARD, "lib/loose.h": GUARD},
                    "lib/helpers/any.h:1: `helpers` is not a room of the design",
                    "lib/loose.h:1: `lib` is not a room of the design")

    def test_include_cycle(self):
        self.expect({"lib/norms/curve.h": GUARD + '#include "norms/lms.h"\n'},
                    "lib/norms/curve.h:1: include cycle: lib/norms/curve.h -> lib/norms/lms.h "
                    "-> lib/norms/curve.h")

    def test_licence_line_and_guard(self):
        self.expect({"lib/base/bare.h": "int x;\n", "tests/base/empty.cpp": ""},
                    "lib/base/bare.h:1: the first line is not `// SPDX-License-Identifier: MIT`",
                    "lib/base/bare.h:1: a header without `#pragma once`",
                    "tests/base/empty.cpp:1: the first line is not "
                    "`// SPDX-License-Identifier: MIT`")

    def test_long_file(self):
        self.expect({"lib/base/long.cpp": LICENCE + "// line\n" * 398,
                     "tests/base/longer.cpp": LICENCE + "// line\n" * 399},
                    "tests/base/longer.cpp:400: 400 lines, at most 399 allowed")

    def test_long_function(self):
        self.expect({"lib/base/fits.cpp": LICENCE + function_of(59),
                     "cli/long.cpp": LICENCE + "// just above\n" + function_of(60),
                     "lib/base/class.h": GUARD + "class Any {\n" + function_of(61) + "};\n"},
                    "cli/long.cpp:3: `longest` has 60 lines, at most 59 allowed",
                    "lib/base/class.h:4: `longest` has 61 lines, at most 59 allowed")

    def test_top_level(self):
        self.expect({"README.md": None, "scripts/any.sh": ""},
                    "README.md: missing at the top level",
                    "scripts: not an entry that the top level may have")

    def test_too_few_tests_count_only_when_strict(self):
        few = {"tests/base/span_test.cpp": LICENCE}
        self.expect(few)
        found = self.found_in(few, strict=True)
        self.assertEqual(len(found), 1)
        self.assertRegex(found[0], r"^tests: 0\.\d\d lines of test for one of source")


if __name__ == "__main__":
    unittest.main()
