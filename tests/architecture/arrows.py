# SPDX-License-Identifier: MIT
"""Who may include whom."""

from project import Include, Project, room

# From the ground up: a room includes itself and rooms that stand before it.
ROOMS = ["base", "yaml", "ontology", "norms", "cases", "rulebook", "conditions", "compile",
         "image", "assess", "batch", "review", "audit", "render"]

ALLOWED = {name: set(ROOMS[:index + 1]) for index, name in enumerate(ROOMS)}
# Norms are pure arithmetic on numbers: no YAML, no findings.
ALLOWED["norms"] = {"base", "norms"}
# The files carried in the program are raw text; only the program itself reads them.
ALLOWED["embedded"] = {"base", "embedded"}
# The image of the shipped book is made from the files carried in the program.
ALLOWED["image"] |= {"embedded"}
ALLOWED["cli"] = {*ROOMS, "embedded", "cli"}

# Foreign headers that have one home. The library neither parses options nor logs nor prints.
HOMES = {
    "yaml-cpp/": "yaml",
    "spdlog/": "cli",
    "boost/program_options": "cli",
    "iostream": "cli",
}


def wrong_arrows(project: Project) -> list[str]:
    """Each include in lib/ and cli/ that the order of the rooms forbids."""
    found = []
    for file in project.shipped():
        if room(file) not in ALLOWED:
            found.append(f"{file}:1: `{room(file)}` is not a room of the design")
            continue
        for include in project.includes(file):
            message = _objection(project, include)
            if message:
                found.append(f"{file}:{include.line}: {message}")
    return found


def _objection(project: Project, include: Include) -> str | None:
    here = room(include.file)
    target = project.target(include)
    if target is not None:
        if room(target) not in ALLOWED[here]:
            return f"`{here}` may not include `{room(target)}` ({include.path})"
        return None
    for prefix, home in HOMES.items():
        if include.path.startswith(prefix) and here != home:
            return f"only `{home}` may include {include.path}"
    if include.path.split("/")[0] in ALLOWED or include.path.startswith("."):
        return f"there is no {include.path}"
    return None


def cycles(project: Project) -> list[str]:
    """Each ring of files that include one another, named once, from its first file."""
    graph = {file: sorted({target for include in project.includes(file)
                           if (target := project.target(include))})
             for file in project.shipped()}
    found, done = set(), set()

    def visit(file: str, path: list[str]) -> None:
        if file in path:
            ring = path[path.index(file):]
            start = ring.index(min(ring))
            found.add(tuple(ring[start:] + ring[:start]))
        elif file not in done:
            for target in graph.get(file, []):
                visit(target, [*path, file])
            done.add(file)

    for file in graph:
        visit(file, [])
    return [f"{ring[0]}:1: include cycle: {' -> '.join([*ring, ring[0]])}"
            for ring in sorted(found)]
