// SPDX-License-Identifier: MIT
// Node, an inverted index: each fact adds to the gates that it feeds. Usage: peer_index.mjs PREPARED CASES OUT SECONDS
import fs from "node:fs";
import readline from "node:readline";
import { answer, changedFacts } from "./peer_case.mjs";

const [prepared, cases, out, seconds] = process.argv.slice(2);
const book = JSON.parse(fs.readFileSync(prepared, "utf8"));
const feeds = Array.from({ length: book.nodes }, () => []);
const least = new Int32Array(book.nodes), base = new Uint8Array(book.nodes), order = new Int32Array(book.nodes);
book.gates.forEach((gate, position) => {
    least[gate.node] = gate.threshold - gate.sum;
    base[gate.node] = book.base[gate.node] ? 1 : 0;
    order[gate.node] = position;
    for (const [node, delta] of gate.inputs) feeds[node].push([gate.node, delta]);
});
const at = book.gates.map((gate) => gate.node);
const sum = new Int32Array(book.nodes), changed = new Uint8Array(book.nodes);
const dirty = new Uint32Array((book.gates.length >> 5) + 1);
const rulesOf = Array.from({ length: book.nodes }, () => []);
book.rules.forEach((rule, i) => rulesOf[rule.node].push(i));

function judge(baby) {
    const touched = [];
    const change = (node) => {
        if (changed[node]) return;
        changed[node] = 1;
        touched.push(node);
        for (const [gate, delta] of feeds[node]) {
            sum[gate] += delta;
            dirty[order[gate] >> 5] |= 1 << (order[gate] & 31);
        }
    };
    changedFacts(baby, book.facts, change);
    const summed = [];
    for (let word = 0; word < dirty.length; ++word) {
        while (dirty[word] !== 0) {
            const bit = 31 - Math.clz32(dirty[word] & -dirty[word]);
            dirty[word] &= ~(1 << bit);
            const gate = at[(word << 5) + bit];
            summed.push(gate);
            if ((sum[gate] >= least[gate] ? 1 : 0) !== base[gate]) change(gate);
        }
    }
    const said = answer(book, touched, rulesOf, changed);
    for (const gate of summed) sum[gate] = 0;
    for (const node of touched) changed[node] = 0;
    return said;
}

const start = process.cpuUsage();
const spent = () => Object.values(process.cpuUsage(start)).reduce((a, b) => a + b) / 1e6;
const file = fs.openSync(out, "w");
let count = 0, text = "";
for await (const line of readline.createInterface({ input: fs.createReadStream(cases) })) {
    text += judge(JSON.parse(line)) + "\n";
    if (++count % 1024 !== 0) continue;
    fs.writeSync(file, text);
    text = "";
    if (spent() > Number(seconds)) break;
}
fs.writeSync(file, text);
console.log(count, spent());
process.exit(0);
