// SPDX-License-Identifier: MIT
// What a case says, node by node, and how an answer is written; for the peers that run in Node.
function inside(value, [, low, high, lowOpen, highOpen]) {
    if (low !== null && (value < low || (lowOpen && value === low))) return false;
    return high === null || !(value > high || (highOpen && value === high));
}

const none = [];

export function changedFacts(baby, facts, change) {
    for (const statement of baby.findings) {
        const more = typeof statement === "string" ? null : statement;
        const name = more ? more.finding : statement;
        for (const node of facts.present[name] ?? none) change(node);
        if (!more) continue;
        if (more.side === "left" || more.side === "both") (facts.left[name] ?? none).forEach(change);
        if (more.side === "right" || more.side === "both") (facts.right[name] ?? none).forEach(change);
        if (more.familial) (facts.familial[name] ?? none).forEach(change);
    }
    const hours = parseInt(baby.age, 10);
    const days = parseInt(baby.gestation, 10) * 7 + Number(baby.gestation.at(-2));
    for (const range of facts.age) if (inside(hours, range)) change(range[0]);
    for (const range of facts.gestation) if (inside(days, range)) change(range[0]);
    facts[baby.sex].forEach(change);
}

/** `service:urgency` of every service that a rule suggests, by service. */
export function answer(book, touched, rulesOf, changed) {
    const best = new Array(book.services.length).fill(-1);
    const count = (rule) => {
        for (const [service, urgency] of rule.suggest) if (urgency > best[service]) best[service] = urgency;
    };
    for (const node of touched)
        for (const i of rulesOf[node]) if (!book.rules[i].holds) count(book.rules[i]);
    book.always ??= book.rules.filter((rule) => rule.holds);
    for (const rule of book.always) if (!changed[rule.node]) count(rule);
    return best.map((urgency, service) => (urgency < 0 ? "" : `${service}:${urgency}`)).filter(Boolean).join(" ");
}
