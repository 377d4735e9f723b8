# SPDX-License-Identifier: MIT
"""Bad input: a clear message at its place, all problems in one run, nothing lost, never a crash."""
from program import ProgramTest, main, run, run_bytes


class Typos(ProgramTest):
    def test_a_mistyped_finding_and_a_red_flag_in_one_case(self):
        path = self.file("case: t\nfindings:\n  - palmer crease\n  - white pupil\n")
        result = run("assess", path)
        self.assertEqual(result.code, 3)
        self.assertIn(f"{path}:3:5: error: unknown finding `palmer crease`", result.err)
        self.assertRegex(result.err, r"help: did you mean `[^`]*palmar crease")
        self.assertIn("act on these", result.out)
        self.assertIn("white pupil", result.out)
        self.assertNotIn("suggested", result.out)

    def test_the_same_as_json(self):
        path = self.file("findings: [palmer crease, white pupil]\n")
        result = run("assess", path, "--format", "json")
        self.assertEqual(result.code, 3)
        document = result.json()
        self.assertEqual(document["recognised_red_flags"][0]["finding"], "white-pupil")
        self.assertEqual(document["diagnostics"][0]["line"], 1)
        self.assertEqual(document["diagnostics"][0]["column"], 12)
        self.assertNotIn("referrals", document)

    def test_arguments_are_placed_too(self):
        result = run("assess", "-f", "low-set ears", "-f", "white pupil; lft")
        self.assertEqual(result.code, 3)
        self.assertIn("<arguments>:2:14: error: unknown grade `lft`", result.err)
        self.assertIn("help: did you mean `left`", result.err)

    def test_unknown_key_step_service_and_sex(self):
        path = self.file("sexx: female\nexamined: [red-reflx]\nsex: femal\n")
        result = run("assess", path)
        self.assertEqual(result.code, 3)
        for words in ("unknown key `sexx`", "did you mean `sex`", "unknown step `red-reflx`", "`red-reflex`", "unknown value `femal`"):
            self.assertIn(words, result.err)


class Contradictions(ProgramTest):
    def test_both_places_are_shown(self):
        path = self.file("findings:\n  - cleft palate\nabsent:\n  - cleft palate\n")
        result = run("assess", path)
        self.assertEqual(result.code, 3)
        self.assertIn(f"{path}:2:5: error: `cleft palate` is stated present and absent", result.err)
        self.assertIn(f"{path}:4:5: note: stated absent here", result.err)

    def test_a_child_present_below_an_absent_ancestor(self):
        path = self.file("findings: [bilateral-choanal-atresia]\nabsent: [choanal-atresia]\n")
        result = run("assess", path)
        self.assertEqual(result.code, 3)
        self.assertIn("is a kind of `choanal-atresia`", result.err)


class Numbers(ProgramTest):
    def test_gestation_in_decimals_is_refused(self):
        result = run("assess", "-f", "low-set ears", "--gestation", "37.3")
        self.assertEqual(result.code, 3)
        self.assertIn("weeks and days", result.err)

    def test_a_head_of_335_centimetres(self):
        result = run("assess", "-m", "head-circumference=335 cm")
        self.assertEqual(result.code, 3)
        self.assertIn("did you mean `335 mm`", result.err)

    def test_units_and_names(self):
        result = run("assess", "-m", "head-circumference=33", "-m", "head-circumfrence=33 cm", "-m", "weight=3 stone")
        self.assertEqual(result.code, 3)
        for words in ("`33` has no unit", "unknown measure `head-circumfrence`", "unknown unit `stone`"):
            self.assertIn(words, result.err)


class Files(ProgramTest):
    def test_what_no_parser_should_see(self):
        rows = {b"": "empty-file", b"# only a comment\n": "empty-file", b"a: [\n": "yaml-syntax", b"a: \xff\n": "not-utf8", b"a: \0\n": "nul-byte",
                b"a: 1\n---\nb: 2\n": "second-document", b"case: &x a\n": "yaml-anchor", b"sex: female\nsex: male\n": "duplicate-key",
                b"[" * 3000: "too-deep", b"- a\n": "wrong-form", b"case: " + b"x" * (17 << 20): "too-large"}
        for text, code in rows.items():
            with self.subTest(code=code):
                result = run("assess", self.file(text))
                self.assertEqual(result.code, 3)
                self.assertIn(f"[{code}]", result.err)

    def test_json_has_the_same_limits(self):
        rows = {b'{"sex": "female", "sex": "male"}': "duplicate-key", b'{"sex": ': "json-syntax", b"[" * 3000: "too-deep", b'{"a": "\xff"}': "not-utf8"}
        for text, code in rows.items():
            with self.subTest(code=code):
                result = run("assess", self.file(text, "case.json"))
                self.assertEqual(result.code, 3)
                self.assertIn(f"[{code}]", result.err)

    def test_stdin(self):
        result = run_bytes("assess", "-", stdin=b"\xff\xfe\x00")
        self.assertEqual(result.code, 3)
        self.assertIn("<stdin>:1:1", result.err)

    def test_a_file_that_is_not_there_and_a_folder(self):
        self.assertIn("cannot be read", run("assess", "no/such/file.yaml").err)
        self.assertEqual(run("assess", "tests").code, 3)

    def test_escape_sequences_are_inert(self):
        result = run("assess", self.file("case: \"\\e[31mred\"\nfindings: [\"low \\e]0;x\\a ears\"]\n"))
        self.assertNotIn("\x1b", result.out + result.err)


class Usage(ProgramTest):
    def test_usage_errors_exit_2_with_the_nearest_name(self):
        for arguments, words in ((("asess",), "did you mean `assess`"), (("assess", "--formt", "json"), "`--format`"), (("assess", "--form", "json"), "`--format`"),
                                 (("assess", "-f", "x", "--format", "jsn"), "`json`"), (("assess",), "no case"), (("lookup",), "no name"),
                                 (("assess", "a.yaml", "-f", "x"), "not both"), (("assess", "a", "b"), "too many"),
                                 (("assess", "-f", "low-set ears", "--why", "three-independent-minor-variant"), "`three-independent-minor-variants`")):
            with self.subTest(arguments=arguments):
                result = run(*arguments)
                self.assertEqual(result.code, 2, result.err)
                self.assertIn(words, result.err)

    def test_no_arguments_show_the_help_on_stderr(self):
        result = run()
        self.assertEqual((result.code, result.out), (2, ""))
        self.assertIn("Verbs", result.err)


if __name__ == "__main__":
    main()
