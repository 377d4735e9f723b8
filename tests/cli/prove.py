# SPDX-License-Identifier: MIT
"""Promises decided, and the cases that break them."""
import pathlib

from program import ProgramTest, main, run


class Prove(ProgramTest):
    def test_every_promise_of_the_built_in_book_holds(self):
        result = run("prove", "--format", "json")
        self.assertEqual(result.code, 0)
        document = result.json()
        self.assertEqual(document["schema"], "asterism.prove/1")
        self.assertGreaterEqual(len(document["promises"]), 40)
        for promise in document["promises"]:
            self.assertEqual(promise["result"], "holds", promise["id"])
            self.assertIsInstance(promise["ms"], int)

    def broken_book(self):
        path = pathlib.Path(self.file("", "empty")).parent
        for name in pathlib.Path("rules/newborn").rglob("*.yaml"):
            target = path / name.relative_to("rules/newborn")
            target.parent.mkdir(parents=True, exist_ok=True)
            text = name.read_text(encoding="utf-8")
            if name.name == "anus.yaml" and name.parent.name == "referrals":
                text = text.replace("[ { present: imperforate-anus },", "[ { all: [ { present: imperforate-anus }, { sex: male } ] },")
            target.write_text(text, encoding="utf-8")
        return str(path)

    def test_a_broken_promise_comes_with_a_case_that_assess_judges_the_same(self):
        result = run("prove", self.broken_book(), "--promise", "closed-anus-surgery-now", "--format", "json")
        self.assertEqual(result.code, 4)
        [promise] = result.json()["promises"]
        self.assertEqual(promise["result"], "broken")
        self.assertTrue(promise["place"].split(":")[0].endswith("promises.yaml"))
        case = self.file(promise["counterexample"])
        answer = run("assess", case, "--rulebook", self.broken_book(), "--format", "json").json()
        [surgery] = [r for r in answer["referrals"] if r["service"] == "surgery"]
        self.assertNotEqual((surgery["verdict"], surgery["urgency"]), ("suggested", "emergency"))

    def test_text_names_the_place_and_carries_the_caution(self):
        result = run("prove", self.broken_book(), "--promise", "closed-anus-surgery-now")
        self.assertEqual(result.code, 4)
        self.assertIn("- imperforate-anus", result.out)
        self.assertIn("1 promises: 0 hold, 1 broken, 0 not proven", result.out)
        self.assertIn("nothing here is a diagnosis", result.out)

    def test_wrong_use(self):
        for arguments, words in ((("--promise", "white-pupil-sameday"), "did you mean `white-pupil-same-day`"),
                                 (("--limit", "0"), "--limit SECONDS"), (("--limit", "soon"), "--limit SECONDS"),
                                 (("--format", "yaml"), "yaml")):
            result = run("prove", *arguments)
            self.assertEqual(result.code, 2, arguments)
            self.assertIn(words, result.err)

    def test_a_promise_that_does_not_read_is_placed(self):
        folder = pathlib.Path(self.broken_book())
        (folder / "promises.yaml").write_text("promises:\n  - promise: p\n    when: { present: white-pupl }\n    then: { suggest: any }\n"
                                              "    because: x\n    sources: common-practice\n", encoding="utf-8")
        result = run("prove", str(folder), "--format", "json")
        self.assertEqual(result.code, 3)
        [problem] = result.json()["diagnostics"]
        self.assertEqual((problem["code"], problem["line"]), ("unknown-finding", 3))


if __name__ == "__main__":
    main()
