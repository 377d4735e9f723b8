# SPDX-License-Identifier: MIT
"""The schemas that the program emits and the program itself accept and refuse the same files, as python3-jsonschema
(an independent reader of draft-07) judges: every shipped file, every break of tests/check/broken.yaml that is a matter
of structure, and random structural edits of shipped files.

Out of a schema's reach, and left out here: names that exist nowhere (they are offered, not required), values inside a
text (dates, bounds, units), keys that exclude or require each other (`one-of`, `one-bound`, `missing-key` of a counting
key, of `instrument` or of a promise), and everything that takes more than one place to see."""
import json
import random
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

import jsonschema
import yaml

PROGRAM = str(Path(sys.argv.pop(1)).resolve())
PROJECT = Path(__file__).resolve().parents[2]
STRUCTURE = {"unknown-key", "missing-key", "wrong-form", "unknown-value", "unknown-condition"}
BASE = PROJECT / "tests/check/base"
EDITS = 400


class Core(yaml.SafeLoader):
    """YAML 1.2's core schema, as editors read: no dates, no `yes`, decimal numbers."""


Core.yaml_implicit_resolvers = {}
for tag, pattern, first in (("null", r"^(?:~|null|Null|NULL|)$", ["~", "n", "N", ""]), ("bool", r"^(?:true|false)$", "tf"),
                            ("int", r"^-?[0-9]+$", "-0123456789"), ("float", r"^-?[0-9]+\.[0-9]+$", "-0123456789")):
    Core.add_implicit_resolver(f"tag:yaml.org,2002:{tag}", __import__("re").compile(pattern), list(first))
Core.add_constructor("tag:yaml.org,2002:int", lambda loader, node: int(node.value, 10))


def load(text):
    return yaml.load(text, Loader=Core)


def validators():
    result = {}
    for kind in ("rulebook", "vignettes", "releases", "ontology", "case"):
        schema = json.loads((PROJECT / f"rules/schema/{kind}.schema.json").read_text(encoding="utf-8"))
        jsonschema.Draft7Validator.check_schema(schema)
        result[kind] = jsonschema.Draft7Validator(schema)
    return result


VALIDATORS = validators()


def kind_of(name):
    if "releases.yaml" in name:
        return "releases"
    if "/vignettes/" in name:
        return "vignettes"
    return "ontology" if "ontology/" in name else "case" if name.endswith("case.yaml") else "rulebook"


def shipped():
    for folder in ("rules", "ontology", "examples"):
        yield from sorted((PROJECT / folder).rglob("*.yaml"))


def errors_of(folder):
    """The codes of all errors that the program tells of a book."""
    done = subprocess.run([PROGRAM, "check", str(folder / "rules"), "--ontology", str(folder / "ontology"), "--format", "json"],
                          capture_output=True, timeout=60, check=False)
    return {d["code"] for d in json.loads(done.stdout)["diagnostics"] if d["severity"] == "error"}


def copy_base(folder):
    for path in BASE.rglob("*.yaml"):
        target = folder / path.relative_to(BASE)
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(path.read_bytes())


def places(node, path=()):
    yield path
    for key, value in node.items() if isinstance(node, dict) else enumerate(node) if isinstance(node, list) else ():
        yield from places(value, (*path, key))


def at(node, path):
    for step in path:
        node = node[step]
    return node


def edit(tree, chance):
    """One structural edit: a key renamed, added or dropped, or a value of another type."""
    path = chance.choice([p for p in places(tree) if p])
    parent, key = at(tree, path[:-1]), path[-1]
    what = chance.choice(["drop", "rename", "add", "text", "list", "map", "number", "true", "null", "empty", "same"])
    if what == "drop":
        del parent[key]
    elif what == "rename" and isinstance(parent, dict):
        parent[str(key) + "x"] = parent.pop(key)
    elif what == "add" and isinstance(parent, dict):
        parent["surplus"] = "x"
    else:
        parent[key] = {"text": "word", "list": [], "map": {}, "number": 7, "true": True, "null": None,
                       "empty": ""}.get(what, [parent[key]])
    return what, path


class Agreement(unittest.TestCase):
    def test_shipped_schemas_are_what_the_program_says(self):
        with tempfile.TemporaryDirectory() as folder:
            subprocess.run([PROGRAM, "schema", "--into", folder, "--rulebook", "rules/newborn", "--ontology", "ontology"],
                           cwd=PROJECT, check=True, capture_output=True)
            for path in sorted(Path(folder).iterdir()):
                self.assertEqual((PROJECT / "rules/schema" / path.name).read_text(encoding="utf-8"),
                                 path.read_text(encoding="utf-8"), f"{path.name}: run asterism schema --into rules/schema")

    def test_every_shipped_file_is_accepted(self):
        for path in shipped():
            errors = VALIDATORS[kind_of(path.as_posix())].iter_errors(load(path.read_text(encoding="utf-8")))
            self.assertEqual([e.message[:200] for e in errors], [], path)

    def test_broken_books(self):
        sys.argv.insert(1, PROGRAM)
        sys.path.insert(0, str(PROJECT / "tests/check"))
        from broken import breaks, materialise
        judged = 0
        for number, one in enumerate(breaks()):
            name = one.get("file", "rules/book.yaml")
            with self.subTest(number=number, **one), tempfile.TemporaryDirectory() as folder:
                materialise(one, Path(folder))
                try:
                    tree = load((Path(folder) / name).read_text(encoding="utf-8"))
                except (yaml.YAMLError, UnicodeDecodeError):
                    continue
                if name.endswith(".csv") or tree is None:
                    continue
                valid = VALIDATORS[kind_of("/" + name)].is_valid(tree)
                told = errors_of(Path(folder))
                if one["code"] in STRUCTURE | {"too-deep", "not-a-vignette"} and not self.beyond(one):
                    self.assertFalse(valid)
                    judged += 1
                elif not told & STRUCTURE:
                    self.assertTrue(valid)
        self.assertGreaterEqual(judged, 25)

    @staticmethod
    def beyond(one):
        """Structural codes of what a schema cannot see: see the head of this file."""
        needs_another = ("digit, class: major", "width, label")
        counting_key = one["code"] == "unknown-key" and ("key: ¦" in one["put"] or "covers: [¦" in one["put"])
        return one.get("at") in needs_another or counting_key or "0x14" in one["put"]

    def test_random_structural_edits(self):
        chance = random.Random(6)
        names = ["rules/book.yaml", "ontology/ontology.yaml", "rules/vignettes/babies.yaml"]
        trees = {name: (BASE / name).read_text(encoding="utf-8") for name in names}
        refused = 0
        for number in range(EDITS):
            name = names[number % 3]
            tree = load(trees[name])
            what, path = edit(tree, chance)
            valid = VALIDATORS[kind_of("/" + name)].is_valid(tree)
            with tempfile.TemporaryDirectory() as folder:
                copy_base(Path(folder))
                (Path(folder) / name).write_text(yaml.safe_dump(tree, sort_keys=False), encoding="utf-8")
                codes = errors_of(Path(folder))
            told = codes if what == "empty" else codes & STRUCTURE  # an empty text may be told as an unknown name
            if self.semantic(told, what, path, tree):
                continue
            self.assertEqual(valid, not told, (number, name, what, path, told))
            refused += not valid
        self.assertGreaterEqual(refused, EDITS // 4)

    @staticmethod
    def semantic(told, what, path, tree):
        """Edits that the program refuses by a rule between keys, or whose words it looks up as keys."""
        del tree
        keys = {str(step) for step in path}
        between = what in ("drop", "rename") and path[-1] in ("key", "instrument") or "covers" in keys or path[-1] == "key"
        return told <= {"missing-key", "unknown-key"} and between


if __name__ == "__main__":
    unittest.main()
