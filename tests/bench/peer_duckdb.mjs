// SPDX-License-Identifier: MIT
// DuckDB: one join and one sum a level of the circuit, over all cases at once.
// Usage: peer_duckdb.mjs PREPARED CASES OUT THREADS MODULES
import fs from "node:fs";
import { createRequire } from "node:module";

const [prepared, cases, out, threads, modules] = process.argv.slice(2);
const { DuckDBInstance } = createRequire(modules + "/")("@duckdb/node-api");
const book = JSON.parse(fs.readFileSync(prepared, "utf8"));
const db = await (await DuckDBInstance.create(":memory:", { threads })).connect();
const text = (value) => `'${String(value).replaceAll("'", "''")}'`;
const insert = async (table, rows) => {
    for (let i = 0; i < rows.length; i += 2000)
        await db.run(`INSERT INTO ${table} VALUES ${rows.slice(i, i + 2000).map((r) => `(${r.join(",")})`).join(",")}`);
};
await db.run(`CREATE TABLE says(kind VARCHAR, name VARCHAR, node INT); CREATE TABLE ranges(kind VARCHAR, node INT, low DOUBLE,
    high DOUBLE, low_open BOOL, high_open BOOL); CREATE TABLE inputs(level INT, gate INT, node INT, delta INT, least INT, base BOOL);
    CREATE TABLE suggest(node INT, holds BOOL, service INT, urgency INT)`);
await insert("says", ["present", "left", "right", "familial"].flatMap((kind) =>
    Object.entries(book.facts[kind]).flatMap(([name, nodes]) => nodes.map((node) => [text(kind), text(name), node]))));
await insert("says", ["female", "male"].flatMap((sex) => book.facts[sex].map((node) => ["'sex'", text(sex), node])));
await insert("ranges", ["age", "gestation"].flatMap((kind) =>
    book.facts[kind].map(([node, low, high, lo, ho]) => [text(kind), node, low ?? -1e9, high ?? 1e9, lo, ho])));
await insert("inputs", book.gates.flatMap((g) =>
    g.inputs.map(([node, delta]) => [g.level, g.node, node, delta, g.threshold - g.sum, book.base[g.node]])));
await insert("suggest", book.rules.flatMap((r) => r.suggest.map(([s, u]) => [r.node, r.holds, s, u])));

const start = process.cpuUsage();
const spent = () => Object.values(process.cpuUsage(start)).reduce((a, b) => a + b) / 1e6;
await db.run(`CREATE TABLE baby AS SELECT row_number() OVER () AS c, * FROM read_json(${text(cases)}, format='newline_delimited',
    columns={sex:'VARCHAR', gestation:'VARCHAR', age:'VARCHAR', findings:'JSON[]'});
  CREATE TABLE said AS SELECT c, coalesce(f->>'finding', f->>'$') AS name, f->>'side' AS side, f->>'familial' AS familial
    FROM (SELECT c, unnest(findings) AS f FROM baby);
  CREATE TABLE numbers AS SELECT c, 'age' AS kind, rtrim(age, 'h')::DOUBLE AS x FROM baby UNION ALL
    SELECT c, 'gestation', split_part(gestation, 'w', 1)::DOUBLE * 7 + rtrim(split_part(gestation, 'w', 2), 'd')::DOUBLE FROM baby;
  CREATE TABLE changed AS SELECT DISTINCT c, node FROM (
    SELECT c, node FROM said JOIN says USING (name) WHERE kind = 'present'
      OR (kind = 'left' AND side IN ('left', 'both')) OR (kind = 'right' AND side IN ('right', 'both'))
      OR (kind = 'familial' AND familial = 'true')
    UNION ALL SELECT c, node FROM baby JOIN says ON kind = 'sex' AND name = sex
    UNION ALL SELECT c, node FROM numbers JOIN ranges USING (kind)
      WHERE (x > low OR (x = low AND NOT low_open)) AND (x < high OR (x = high AND NOT high_open)))`);
const levels = Math.max(...book.gates.map((g) => g.level));
for (let level = 1; level <= levels; ++level)
    await db.run(`INSERT INTO changed SELECT c, gate FROM changed JOIN inputs USING (node) WHERE level = ${level}
        GROUP BY c, gate HAVING (sum(delta) >= any_value(least)) <> any_value(base)`);
const always = book.rules.some((r) => r.holds)
    ? `UNION ALL SELECT c, service, urgency FROM baby, suggest s WHERE holds AND NOT EXISTS
         (SELECT 1 FROM changed h WHERE h.c = baby.c AND h.node = s.node)` : "";
const reader = await db.runAndReadAll(`SELECT c, string_agg(service || ':' || urgency, ' ' ORDER BY service) AS said FROM (
    SELECT c, service, max(urgency) AS urgency FROM (
      SELECT c, service, urgency FROM changed JOIN suggest USING (node) WHERE NOT holds ${always}) GROUP BY c, service)
  RIGHT JOIN (SELECT c FROM baby) USING (c) GROUP BY c ORDER BY c`);
const rows = reader.getRows();
fs.writeFileSync(out, rows.map(([, said]) => (said ?? "") + "\n").join(""));
console.log(rows.length, spent());
