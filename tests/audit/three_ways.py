# SPDX-License-Identifier: MIT
"""Invented babies that say everything a case can say, written as JSON Lines, as CSV with one row a baby and as CSV
with one row a finding, by Python's own json and csv.
"""
import csv
import io
import json

import invented_year

OF_BABY = ["case", "sex", "gestation", "age", "born", "examined-on", "examined", "measures", "history", "referred",
           "decided-on", "unit", "examiner"]
OF_FINDING = ["finding", "state", "side", "grade", "familial"]
PAIRED, GRADED = {"low-set ears", "lop ear", "preauricular pit"}, {"lop ear": ["mild", "marked"]}


def baby(number, chance):
    """A baby of the invented year with everything a case can say."""
    one = invented_year.baby(number, chance)
    one["case"] = chance.choice(["n, {}", "n \"{}\"", "no. {}"]).format(number)
    names = one["findings"] + (["lop ear"] if chance.random() < 0.1 else [])
    one["findings"] = [statement(name, chance) for name in names]
    rest = [name for name in ("cleft palate", "heart murmur", "clubfoot") if name not in names and chance.random() < 0.1]
    one["absent"], one["unsure"] = rest[:1], rest[1:]
    if chance.random() < 0.2:
        one["measures"] = {"head-circumference": f"{chance.uniform(30, 38):.1f} cm", "weight": f"{chance.randrange(2000, 4500)} g"}
    if chance.random() < 0.3:
        one["history"] = chance.choice(["none", ["breech presentation"]])
    if chance.random() < 0.1:
        del one["unit"]
    return one


def statement(name, chance):
    more = {}
    if name in PAIRED and chance.random() < 0.5:
        more["side"] = chance.choice(["left", "right", "both"])
    if name in GRADED:
        more["grade"] = chance.choice(GRADED[name])
    if chance.random() < 0.1:
        more["familial"] = True
    return {"finding": name, **more} if more else name


def parts(said):
    return {"finding": said} if isinstance(said, str) else said


def item(said):
    said = parts(said)
    return "; ".join([said["finding"], *(said[key] for key in ("side", "grade") if key in said),
                      *(["familial"] if "familial" in said else [])])


def of_baby(one):
    """The cells of both forms that speak of the baby."""
    cells = {key: one.get(key, "") for key in OF_BABY}
    cells["examined"] = "|".join(p if isinstance(p, str) else f"except={p['except'][0]}" for p in one["examined"])
    cells["measures"] = "|".join(f"{key}={value}" for key, value in one.get("measures", {}).items())
    cells["history"] = one["history"] if isinstance(one.get("history"), str) else "|".join(one.get("history", []))
    if "decisions" in one:
        cells["referred"] = "|".join(one["decisions"]["referred"]) or "none"
        cells["decided-on"] = one["decisions"].get("on", "")
    return cells


def json_lines(babies):
    return "".join(json.dumps(one) + "\n" for one in babies)


def table(columns, rows):
    out = io.StringIO()
    writer = csv.DictWriter(out, columns, lineterminator="\n")
    writer.writeheader()
    writer.writerows(rows)
    return out.getvalue()


def wide(babies):
    return table(OF_BABY + ["findings", "absent", "unsure"],
                 ({**of_baby(one), **{key: "|".join(map(item, one[key])) for key in ("findings", "absent", "unsure")}}
                  for one in babies))


def rows_of(one):
    """What each row says of its finding; one empty row of a baby without any."""
    rows = []
    for key, state in (("findings", "present"), ("absent", "absent"), ("unsure", "unsure")):
        for said in one[key]:
            row = dict(parts(said), state=state)
            if "familial" in row:
                row["familial"] = "true"
            rows.append(row)
    return rows or [{}]


def long(babies, spread):
    """`spread` puts a baby's cells on its rows: (cells, row, rows) -> the cells of that row."""
    rows = []
    for one in babies:
        found = rows_of(one)
        for at, row in enumerate(found):
            rows.append({"case": one["case"], **spread(of_baby(one), at, len(found)), **row})
    return table(OF_FINDING + OF_BABY, rows)


def on_each(cells, at, rows):
    return cells


def on_first(cells, at, rows):
    return cells if at == 0 else {}


def on_last(cells, at, rows):
    return cells if at == rows - 1 else {}


def scattered(cells, at, rows):
    return {key: value for index, (key, value) in enumerate(cells.items()) if index % rows == at}
