# SPDX-License-Identifier: MIT
"""Each page under axe-core, in a headless Chromium. axe-core is pinned in tests/npm and installed by
tests/npm/check.sh; without it, or without a browser, the check says that it was skipped."""

import html
import json
import re
import sys
from pathlib import Path

from browser import DARK, Program, chromium, run_browser, skip, without_policy, written_pages

AXE = Path("tests/npm/node_modules/axe-core/axe.min.js")
FEWEST_RULES = 10  # fewer that apply, and the check has not seen the page

RUN = """<script>{axe}</script><script>
addEventListener('load', () => axe.run(document, {{ resultTypes: ['violations'] }}).then(results => {{
  const out = document.createElement('pre');
  out.id = 'axe-results';
  out.textContent = JSON.stringify({{
    checked: results.passes.length,
    violations: results.violations.map(
      v => ({{ id: v.id, help: v.help, nodes: v.nodes.map(n => n.html) }})) }});
  document.body.append(out);
}}));
</script></head>"""


def results_of(page: Path, folder: Path, dark: bool) -> dict:
    """Runs axe on a copy of the page without its policy; the page itself lets no script in."""
    text = without_policy(page.read_text(encoding="utf-8"))
    text = text.replace("<details", "<details open")  # what is folded away is text too
    copy = folder / f"{page.stem}-axe.html"
    script = RUN.format(axe=AXE.read_text(encoding="utf-8"))
    copy.write_text(text.replace("</head>", script, 1), encoding="utf-8")
    dom = run_browser([*([DARK] if dark else []), "--window-size=1280,2000",
                       "--virtual-time-budget=20000", "--dump-dom", copy.as_uri()])
    found = re.search(r'<pre id="axe-results">(.*?)</pre>', dom, re.S)
    if not found:
        raise RuntimeError(f"{page.name}: axe gave no result")
    return json.loads(html.unescape(found[1]))


def report(name: str, results: dict) -> bool:
    """Prints what axe said; true when the page is in order."""
    violations = results["violations"]
    print(f"{name}: {results['checked']} rules passed, {len(violations)} violated")
    for violation in violations:
        print(f"  {violation['id']}: {violation['help']}")
        for node in violation["nodes"][:3]:
            print(f"    {node[:200]}")
    return not violations and results["checked"] >= FEWEST_RULES


def main() -> int:
    chromium()
    if not AXE.exists():
        skip("axe-core is not installed (tests/npm/check.sh installs it)")
    folder = Path(sys.argv[2]).resolve() / "accessibility"
    good = [report(f"{name}, {'dark' if dark else 'light'}", results_of(page, folder, dark))
            for name, page in written_pages(Program(sys.argv[1]), folder).items()
            for dark in (False, True)]
    return 0 if all(good) else 1


if __name__ == "__main__":
    sys.exit(main())
