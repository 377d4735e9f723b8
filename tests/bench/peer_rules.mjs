// SPDX-License-Identifier: MIT
// json-rules-engine: every rule of the book is a rule of the engine; what rules share is a fact that the engine works
// out once a case, since its conditions cannot count weights. Usage: peer_rules.mjs PREPARED CASES OUT SECONDS MODULES
import fs from "node:fs";
import { createRequire } from "node:module";
import { changedFacts } from "./peer_case.mjs";

const [prepared, cases, out, seconds, modules] = process.argv.slice(2);
const { Engine } = createRequire(modules + "/")("json-rules-engine");
const book = JSON.parse(fs.readFileSync(prepared, "utf8"));
const engine = new Engine([], { allowUndefinedFacts: true });
for (const gate of book.gates) {
    engine.addFact(`n${gate.node}`, async (_, almanac) => {
        let sum = gate.sum;
        for (const [node, delta] of gate.inputs) if (await almanac.factValue(`n${node}`)) sum += delta;
        return (sum >= gate.threshold) !== book.base[gate.node];
    });
}
for (const rule of book.rules) {
    const fact = { fact: `n${rule.node}`, operator: "equal", value: true };
    const event = { type: "suggest", params: rule };
    engine.addRule({ conditions: { all: [rule.holds ? { not: fact } : fact] }, event });
}
const facts = new Set(Array.from({ length: book.nodes }, (_, node) => node));
for (const gate of book.gates) facts.delete(gate.node);

const start = process.cpuUsage();
const spent = () => Object.values(process.cpuUsage(start)).reduce((a, b) => a + b) / 1e6;
const lines = fs.readFileSync(cases, "utf8").split("\n");
const file = fs.openSync(out, "w");
let count = 0;
for (const line of lines) {
    if (!line) continue;
    const said = {};
    for (const node of facts) said[`n${node}`] = false;
    changedFacts(JSON.parse(line), book.facts, (node) => (said[`n${node}`] = true));
    const best = new Map();
    for (const { params } of (await engine.run(said)).events)
        for (const [service, urgency] of params.suggest) best.set(service, Math.max(urgency, best.get(service) ?? -1));
    const sorted = [...best].sort((a, b) => a[0] - b[0]);
    fs.writeSync(file, sorted.map(([s, u]) => `${s}:${u}`).join(" ") + "\n");
    ++count;
    if (spent() > Number(seconds)) break;
}
console.log(count, spent());
